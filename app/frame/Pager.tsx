import { formatCount } from '../../lib/charts/format';
import { counted } from '../words/counted';

interface PagerProps {
  /** Position of the first row shown, from 0. */
  readonly first: number;
  readonly shown: number;
  readonly total: number;
  /** Rows of a page. */
  readonly step: number;
  readonly noun: string;
  /** @param page from 0 */
  readonly onPage: (page: number) => void;
}

/** Ways to the rows before and after those shown; nothing where all are. */
export function Pager({ first, shown, total, step, noun, onPage }: PagerProps) {
  if (total <= step) return null;
  const page = Math.floor(first / step);
  return (
    <div className="buttons">
      <button type="button" disabled={page === 0} onClick={() => onPage(page - 1)}>
        Previous {step}
      </button>
      <span role="status">
        Rows {formatCount(first + 1)} to {formatCount(first + shown)} of {counted(total, noun)}
      </span>
      <button type="button" disabled={first + shown >= total} onClick={() => onPage(page + 1)}>
        Next {step}
      </button>
    </div>
  );
}
