'use client';

import type { NotAnswered } from './useAsked';

/** Says why there is no answer, with the way to ask again beside it. */
export function NotComputed({ message, tryAgain }: Omit<NotAnswered, 'status'>) {
  return (
    <div role="alert">
      <p>{message}</p>
      <p className="buttons">
        <button type="button" onClick={tryAgain}>
          Try again
        </button>
      </p>
    </div>
  );
}
