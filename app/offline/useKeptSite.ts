'use client';

import { useEffect, useSyncExternalStore } from 'react';
import { useEngine } from '../engine/EngineProvider';
import { whenIdle } from '../engine/whenIdle';
import { type KeptSite, keepSite } from './keepSite';
import { serviceWorkerAddress, siteVersion } from './siteVersion';

/** Time that pictures get after the data are open, before files are fetched to be kept, ms. */
const calm_ms = 2_000;

let kept: KeptSite = 'not known';
let takeNewer: (() => void) | null = null;
let hasStarted = false;
const listeners = new Set<() => void>();

function change(now: KeptSite): void {
  kept = now;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function start(): void {
  const version = siteVersion();
  const address = serviceWorkerAddress();
  if (hasStarted || version === null || address === null || !('serviceWorker' in navigator)) return;
  hasStarted = true;
  const reload = () => location.reload();
  keepSite(address, { version, container: navigator.serviceWorker, onChange: change, reload }).then(
    (take) => {
      takeNewer = take;
    },
    // A browser that keeps nothing shows the page all the same: there is nothing to say.
    () => {},
  );
}

/** Has the site kept once the first picture is there and the page is idle. */
export function useKeeping(): void {
  const isWorking = useEngine().state.work !== null;
  useEffect(() => {
    if (isWorking) return;
    let callOff = () => {};
    const timer = setTimeout(() => {
      callOff = whenIdle(start);
    }, calm_ms);
    return () => {
      clearTimeout(timer);
      callOff();
    };
  }, [isWorking]);
}

/** What the browser keeps of the site, and how a newer version is taken. */
export function useKeptSite(): { readonly kept: KeptSite; readonly takeNewer: () => void } {
  const now = useSyncExternalStore(
    subscribe,
    () => kept,
    () => 'not known' as const,
  );
  return { kept: now, takeNewer: () => takeNewer?.() };
}
