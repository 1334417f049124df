import { spawn } from 'node:child_process';

const ownGroup = process.platform !== 'win32';
const graceMilliseconds = 5000;
const signalNumbers = { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 };

const running = new Set();

/**
 * Runs a command and waits for it: exit code, what it printed if captured, and whether it could not be started or ran out of time.
 * It gets a process group of its own, which is ended as a whole when this process is told to stop, when the
 * time is up, and when the command itself has ended: nothing it started is left behind.
 */
export function runCommand(command, args, { cwd, env, capture = false, timeoutMilliseconds } = {}) {
  return new Promise((resolve) => {
    let output = '';
    let timedOut = false;
    const child = spawn(command, args, {
      cwd,
      env: { ...process.env, ...env },
      detached: ownGroup,
      stdio: ['ignore', 'inherit', capture ? 'pipe' : 'inherit'],
    });
    started(child);
    child.stderr?.on('data', (chunk) => {
      output += chunk;
      process.stderr.write(chunk);
    });
    const timer =
      timeoutMilliseconds === undefined
        ? undefined
        : setTimeout(() => {
            timedOut = true;
            endGroup(child, 'SIGTERM');
            setTimeout(() => endGroup(child, 'SIGKILL'), graceMilliseconds).unref();
          }, timeoutMilliseconds);
    const end = () => {
      clearTimeout(timer);
      ended(child);
    };
    child.on('error', (error) => {
      end();
      resolve({ code: 1, output, timedOut, error });
    });
    child.on('exit', end);
    child.on('close', (code, signal) =>
      resolve({ code: code ?? 128 + (signalNumbers[signal] ?? 9), output, timedOut }),
    );
  });
}

/** Runs npm, the one that started this process if there is one. */
export function runNpm(args, options) {
  const npm = process.env.npm_execpath;
  if (npm?.endsWith('.js')) return runCommand(process.execPath, [npm, ...args], options);
  return runCommand(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, options);
}

/** Builds the static site into out/. The framework's own reports to its maker stay off: nothing leaves the machine. */
export function buildSite(root, options = {}) {
  return runNpm(['run', '-s', 'build'], { ...options, cwd: root, env: { NEXT_TELEMETRY_DISABLED: '1' } });
}

function endGroup(child, signal) {
  if (child.pid === undefined) return;
  try {
    if (ownGroup) process.kill(-child.pid, signal);
    else child.kill(signal);
  } catch (error) {
    if (error.code !== 'ESRCH') throw error;
  }
}

/** Told to stop: ends the groups, then this process; while nothing runs, signals act as they do without this file. */
function stop(signal) {
  const end = () => process.exit(128 + signalNumbers[signal]);
  for (const child of running) {
    endGroup(child, 'SIGTERM');
    child.on('exit', end);
  }
  setTimeout(() => {
    for (const child of running) endGroup(child, 'SIGKILL');
    end();
  }, graceMilliseconds);
}

function started(child) {
  if (running.size === 0) for (const signal of Object.keys(signalNumbers)) process.on(signal, stop);
  running.add(child);
}

function ended(child) {
  running.delete(child);
  if (running.size === 0) for (const signal of Object.keys(signalNumbers)) process.off(signal, stop);
  endGroup(child, 'SIGKILL');
}
