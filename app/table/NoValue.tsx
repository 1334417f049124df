import { noValue } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';

/** An en dash for a value that does not exist, with the reason for those who point at it or hear the page. */
export function NoValue({ reason }: { readonly reason: string }) {
  const why = rewritten(reason);
  return (
    <span title={why}>
      <span aria-hidden="true">{noValue}</span>
      <span className="visuallyHidden">{`none: ${why}`}</span>
    </span>
  );
}
