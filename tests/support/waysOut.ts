/** What a way out, or a way to run a text, came to: 'refused', or what it gave. */
export type Outcomes = Readonly<Record<string, string>>;

/** Tries to reach another site and to run texts from where it runs, a page or a worker. To be called in the browser. */
export async function waysOut(outside: string): Promise<Outcomes> {
  // What is called from outside may evaluate texts as it likes; what follows a timer is the page's own.
  await new Promise((resolve) => setTimeout(resolve));
  const opened = (source: WebSocket | EventSource) =>
    new Promise((resolve, reject) => {
      source.onopen = resolve;
      source.onerror = reject;
    });
  const scope = globalThis as unknown as {
    eval: (text: string) => unknown;
    importScripts?: (url: string) => void;
  };
  const ways: Readonly<Record<string, () => unknown>> = {
    fetch: () => fetch(`${outside}/fetch`),
    post: () => fetch(`${outside}/post`, { method: 'POST', mode: 'no-cors', body: 'readings' }),
    request: () => {
      const request = new XMLHttpRequest();
      request.open('GET', `${outside}/request`, false);
      request.send();
    },
    socket: () => opened(new WebSocket(`${outside.replace('http', 'ws')}/socket`)),
    events: () => opened(new EventSource(`${outside}/events`)),
    ...(scope.importScripts === undefined
      ? {}
      : { script: () => scope.importScripts?.(`${outside}/script.js`) }),
    evaluated: () => scope.eval('1'),
    made: () => new Function('return 1')(),
  };
  const outcomes: Record<string, string> = {};
  for (const [name, way] of Object.entries(ways)) {
    try {
      outcomes[name] = `gave ${await way()}`;
    } catch {
      outcomes[name] = 'refused';
    }
  }
  return outcomes;
}

/** Puts elements into a page that would fetch from another site or run a script, and waits a little. To be called in the browser. */
export async function elementsOut(outside: string): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve));
  const run = 'window.ranFromAnElement = 1';
  const add = (name: string, attributes: Readonly<Record<string, string>>, text = '') => {
    const element = document.createElement(name);
    for (const [attribute, value] of Object.entries(attributes)) element.setAttribute(attribute, value);
    element.textContent = text;
    document.body.append(element);
    return element;
  };
  add('img', { src: `${outside}/image` });
  add('script', { src: `${outside}/script.js` });
  add('script', { src: `${outside}/module.js`, type: 'module' });
  add('script', {}, run);
  add('link', { rel: 'stylesheet', href: `${outside}/style.css` });
  add('style', {}, `@import url(${outside}/import.css); body { background: url(${outside}/back.png) }`);
  add('iframe', { src: `${outside}/frame` });
  add('iframe', { srcdoc: `<script>parent.${run}</script>` });
  add('iframe', { src: `javascript:parent.${run}` });
  add('object', { data: `${outside}/object` });
  add('embed', { src: `${outside}/embed` });
  add('video', { src: `${outside}/video`, autoplay: '' });
  add('audio', { src: `${outside}/audio`, autoplay: '' });
  add('div', { style: `background: url(${outside}/inline.png)` }, 'x');
  add('div', { onclick: run }).click();
  add('a', { href: `javascript:${run}` }).click();
  const form = add('form', { action: `${outside}/form`, method: 'post' }) as HTMLFormElement;
  form.submit();
  navigator.sendBeacon(`${outside}/beacon`, 'readings');
  for (const url of [
    `${outside}/worker.js`,
    'data:text/javascript,1',
    URL.createObjectURL(new Blob([run])),
  ]) {
    try {
      new Worker(url);
    } catch {
      // Refused at once, as another origin is.
    }
  }
  await new Promise((resolve) => setTimeout(resolve, 1_000));
}
