import styles from './export.module.css';

interface ExportAct {
  readonly words: string;
  /** What comes of it, shown when it is pointed at. */
  readonly hint: string;
  readonly act: () => void;
}

interface ExportRowProps {
  /** What is exported: buttons of the same words are told apart by it. */
  readonly title: string;
  readonly acts: readonly ExportAct[];
  /** What came of the last act. */
  readonly said: string;
  readonly className?: string | undefined;
}

/** The ways in which a table or a picture leaves the page. */
export function ExportRow({ title, acts, said, className = '' }: ExportRowProps) {
  return (
    <p className={`${styles.row} ${className} screenOnly`}>
      {acts.map(({ words, hint, act }) => (
        <button key={words} type="button" title={hint} onClick={act} aria-label={`${words} ${title}`}>
          {words}
        </button>
      ))}
      <span role="status">{said}</span>
    </p>
  );
}
