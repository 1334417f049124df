import type { TermName } from '../words/terms';
import { Term } from './Term';

interface MarkedNameProps {
  readonly name: string;
  readonly term: TermName | undefined;
}

/** The name of a head, with the mark that explains it where it is a term. */
export function MarkedName({ name, term }: MarkedNameProps) {
  return (
    <>
      {name}
      {term !== undefined && <Term name={term} />}
    </>
  );
}
