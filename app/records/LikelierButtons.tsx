import { useId } from 'react';
import type { Question } from '../../lib/analysis/types';
import { counted } from '../words/counted';
import { kindWords } from '../words/questionWords';
import { type LikelierGroup, likelierGroups } from './questionGroups';
import styles from './records.module.css';

interface LikelierButtonsProps {
  readonly questions: readonly Question[];
  readonly onChoose: (about: readonly Question[], choice: string) => void;
}

function LikelierButton({
  group,
  onChoose,
}: Omit<LikelierButtonsProps, 'questions'> & { group: LikelierGroup }) {
  const id = useId();
  const { kind, guess, questions } = group;
  return (
    <li>
      <span id={id}>
        {counted(questions.length, 'question')} about {kindWords(kind)}, likelier: ‘{guess}’.
      </span>
      <button type="button" aria-describedby={id} onClick={() => onChoose(questions, guess)}>
        Take the likelier choice for all {counted(questions.length, 'question')} of this kind
      </button>
    </li>
  );
}

/** Chooses the likelier answer for all questions of a kind at once; the reader still applies it. */
export function LikelierButtons({ questions, onChoose }: LikelierButtonsProps) {
  const groups = likelierGroups(questions);
  if (groups.length === 0) return null;
  return (
    <ul className={styles.likelier}>
      {groups.map((group) => (
        <LikelierButton key={JSON.stringify([group.kind, group.guess])} group={group} onChoose={onChoose} />
      ))}
    </ul>
  );
}
