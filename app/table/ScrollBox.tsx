import type { ReactNode, Ref } from 'react';

/** A box that scrolls must take the keyboard's focus, or its far columns are out of reach without a mouse. */
const focusable = { tabIndex: 0 };

/** A table of more rows is laid out when it comes near; a short one at once, since its guessed height would be far off. */
const longAbove = 25;

interface ScrollBoxProps {
  readonly labelledBy: string;
  readonly box?: Ref<HTMLElement>;
  /** Rows of the table, where they may be many. */
  readonly rows?: number;
  readonly children: ReactNode;
}

/** The box in which a table scrolls sideways and downwards, so that the page itself never does. */
export function ScrollBox({ labelledBy, box, rows = 0, children }: ScrollBoxProps) {
  return (
    <section
      ref={box}
      className={rows > longAbove ? 'tableBox longTable' : 'tableBox'}
      aria-labelledby={labelledBy}
      {...focusable}
    >
      {children}
    </section>
  );
}
