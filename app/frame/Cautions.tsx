import { cautions } from '../words/cautions';
import styles from './frame.module.css';

/** The cautions, framed, where a page must show them prominently. */
export function Cautions() {
  return (
    <section aria-label="Cautions" className={styles.cautions}>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
