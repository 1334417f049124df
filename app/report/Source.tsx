import Link from 'next/link';
import styles from './report.module.css';

interface SourceProps {
  /** Address of the page, with the same view. */
  readonly href: string;
  readonly page: string;
  /** Heading of the table there. */
  readonly table: string;
  /** What the page shows otherwise than the paper, if it does. */
  readonly note?: string | null;
}

/** Where the figures come from: the table and its page, with the same view. */
export function Source({ href, page, table, note = null }: SourceProps) {
  return (
    <span className={styles.source}>
      From{' '}
      <Link href={href} prefetch={false}>
        {page}, table ‘{table}’
      </Link>
      {note === null ? '' : ` (${note})`}.
    </span>
  );
}
