import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { install } from '../lib/batch/install.mjs';
import { buildSite, runCommand } from '../lib/batch/runCommand.mjs';
import { bringChromium } from './chromium.mjs';
import { runVitest } from './vitestCounts.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const minute = 60_000;

/** Runs every stage, prints its time and, last and alone, `N passed, N failed`; exit status 1 if any failed. */
export async function runStages() {
  const results = [];
  const stage = async (name, run) => {
    const result = await timed(name, run);
    results.push(result);
    return result.failed === 0;
  };
  if (await stage('install', installed)) {
    const chromium = await bringChromium();
    await stage('types', typesHold);
    await stage('lint', () =>
      command(join('node_modules', '@biomejs', 'biome', 'bin', 'biome'), ['check', '.']),
    );
    await stage('unit and reference tests', () => runVitest(root, [], {}, 20 * minute));
    const built = await stage('build', siteBuilds);
    await stage('browser tests', () => browserTests(chromium, built));
  }
  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  const [passed, failed] = [sum('passed'), sum('failed')];
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
}

async function timed(name, run) {
  console.log(`\n== ${name}`);
  const start = performance.now();
  let result;
  try {
    result = await run();
  } catch (error) {
    result = { passed: 0, failed: 1, message: error.stack };
  }
  const { passed, failed, skipped = 0, message } = result;
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const counts = [
    `${passed} passed`,
    `${failed} failed`,
    ...(skipped > 0 ? [`${skipped} skipped`] : []),
  ].join(', ');
  console.log(`-- ${name}: ${counts}, ${seconds} s${message === undefined ? '' : `\n   ${message}`}`);
  return result;
}

/** A stage without counts of its own is one test. */
function single(ok, message) {
  return { passed: ok ? 1 : 0, failed: ok ? 0 : 1, message };
}

/** Installing is no test: it counts only if it fails. */
async function installed() {
  const problem = await install(root);
  return problem === null ? { passed: 0, failed: 0 } : single(false, problem);
}

async function command(program, args) {
  const { code, timedOut } = await runCommand(process.execPath, [join(root, program), ...args], {
    cwd: root,
    env: { NEXT_TELEMETRY_DISABLED: '1' },
    timeoutMilliseconds: 10 * minute,
  });
  return single(code === 0, timedOut ? 'it ran out of time' : undefined);
}

/** The types that the framework generates are not under version control: they are written first. */
async function typesHold() {
  const generated = await command(join('node_modules', 'next', 'dist', 'bin', 'next'), ['typegen']);
  if (generated.failed > 0) return generated;
  return command(join('node_modules', 'typescript', 'bin', 'tsc'), ['--noEmit']);
}

/** The last build goes first, so that the browser tests cannot run against it. */
async function siteBuilds() {
  rmSync(join(root, 'out'), { recursive: true, force: true });
  const { code, timedOut } = await buildSite(root, { timeoutMilliseconds: 15 * minute });
  return single(code === 0, timedOut ? 'it ran out of time' : undefined);
}

function browserTests(chromium, built) {
  if (chromium.path === undefined) return single(false, `not run: ${chromium.message}`);
  if (!built) return single(false, 'not run: the site could not be built');
  const config = ['--config', 'vitest.browser.config.ts', '--project', 'browser'];
  return runVitest(root, config, { CHROMIUM_PATH: chromium.path }, 30 * minute);
}
