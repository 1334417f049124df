import type { ReactNode, Ref } from 'react';

/** A box that scrolls must take the keyboard's focus, or its far columns are out of reach without a mouse. */
const focusable = { tabIndex: 0 };

interface ScrollBoxProps {
  readonly labelledBy: string;
  readonly box?: Ref<HTMLElement>;
  readonly children: ReactNode;
}

/** The box in which a table scrolls sideways and downwards, so that the page itself never does. */
export function ScrollBox({ labelledBy, box, children }: ScrollBoxProps) {
  return (
    <section ref={box} className="tableBox" aria-labelledby={labelledBy} {...focusable}>
      {children}
    </section>
  );
}
