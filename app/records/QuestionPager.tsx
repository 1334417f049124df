import { counted } from '../words/counted';

export const questionsPerPage = 30;

interface QuestionPagerProps {
  /** From 1. */
  readonly page: number;
  /** Number of all questions. */
  readonly all: number;
  readonly onPage: (page: number) => void;
}

/** Turns the pages of many questions. */
export function QuestionPager({ page, all, onPage }: QuestionPagerProps) {
  const first = (page - 1) * questionsPerPage;
  const last = Math.min(first + questionsPerPage, all);
  return (
    <div className="buttons">
      <button type="button" disabled={page === 1} onClick={() => onPage(page - 1)}>
        Previous {questionsPerPage} questions
      </button>
      <span role="status">
        Questions {first + 1} to {last} of {counted(all, 'question')}
      </span>
      <button type="button" disabled={last === all} onClick={() => onPage(page + 1)}>
        Next {questionsPerPage} questions
      </button>
    </div>
  );
}
