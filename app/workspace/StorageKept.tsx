'use client';

import { useCallback, useEffect, useState } from 'react';
import { type Storage, storageSentence } from '../words/storageWords';
import { useKept } from './useKeptState';

async function storageNow(): Promise<Storage | null> {
  const { storage } = navigator;
  if (storage?.estimate === undefined || storage.persisted === undefined) return null;
  const [isPersistent, { usage, quota }] = await Promise.all([storage.persisted(), storage.estimate()]);
  return { isPersistent, used_bytes: usage ?? null, most_bytes: quota ?? null };
}

/** How much this browser keeps for the page, whether it may clear it by itself, and a way to ask it not to. */
export function StorageKept() {
  const [storage, setStorage] = useState<Storage | null>(null);
  const [refused, setRefused] = useState(false);
  const look = useCallback(async () => setStorage(await storageNow().catch(() => null)), []);
  // What is kept has changed, and with the first files the browser was asked.
  const number = useKept().state?.number;
  useEffect(() => {
    if (number !== undefined) void look();
  }, [look, number]);
  if (storage === null) return null;
  const ask = async () => {
    const isGranted = await navigator.storage.persist().catch(() => false);
    setRefused(!isGranted);
    await look();
  };
  return (
    <>
      <p role="status">{storageSentence(storage, refused)}</p>
      {!storage.isPersistent && (
        <p className="buttons">
          <button type="button" onClick={() => void ask()}>
            Ask the browser to keep it
          </button>
        </p>
      )}
    </>
  );
}
