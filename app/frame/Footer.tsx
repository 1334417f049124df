import { KeptSentence } from '../offline/KeptSentence';
import { cautions } from '../words/cautions';
import { WritingControls } from '../writing/WritingControls';
import styles from './frame.module.css';

/** The foot of every page: the cautions. */
export function Footer() {
  return (
    <footer className={styles.footer}>
      <p>{cautions.join(' ')}</p>
      <p>
        Everything is computed in this browser. Nothing leaves the machine.
        <KeptSentence />
      </p>
      <WritingControls />
    </footer>
  );
}
