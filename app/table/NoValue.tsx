import { noValue } from '../../lib/charts/format';

/** An en dash for a value that does not exist, with the reason for those who point at it or hear the page. */
export function NoValue({ reason }: { readonly reason: string }) {
  return (
    <span title={reason}>
      <span aria-hidden="true">{noValue}</span>
      <span className="visuallyHidden">{`none: ${reason}`}</span>
    </span>
  );
}
