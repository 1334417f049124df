import type { ChartTheme } from '../../lib/charts/theme';

const chanceVariables = [0, 1, 2, 3, 4, 5, 6].map((step) => `--chance-${step}`);

/**
 * The chart colours and font in force, read from the style sheet's custom properties as the browser resolves them; with a
 * class, those of elements of that class.
 */
export function readTheme(className = ''): ChartTheme {
  const probe = document.createElement('span');
  probe.className = className;
  // With forced colours every colour of the page reads as the text's, unless an element stands apart.
  probe.style.setProperty('forced-color-adjust', 'none');
  document.body.append(probe);
  const resolved = (variable: string) => {
    probe.style.color = `var(${variable})`;
    return getComputedStyle(probe).color;
  };
  const theme: ChartTheme = {
    paper: resolved('--paper'),
    ink: resolved('--ink'),
    muted: resolved('--muted'),
    grid: resolved('--rule-faint'),
    accent: resolved('--limit'),
    hue: resolved('--hue'),
    chance: chanceVariables.map(resolved),
    font: getComputedStyle(document.body).fontFamily,
  };
  probe.remove();
  return theme;
}
