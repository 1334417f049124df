import { Term } from '../frame/Term';
import { OpenWorkspace } from './OpenWorkspace';
import { SaveWorkspace } from './SaveWorkspace';
import { StorageKept } from './StorageKept';

/** The whole workspace as one file, out and in, and how far this browser keeps it; a file dropped on the page is read. */
export function WorkspacePanel({ dropped }: { readonly dropped: File | null }) {
  return (
    <section aria-labelledby="workspace">
      <h2 id="workspace">Workspace</h2>
      <p>
        One file holds your <Term name="workspace">workspace</Term>: your files as they were dropped, every
        decision, and a list with checksums. Save it against a lost browser, or send it to a colleague.
      </p>
      <SaveWorkspace />
      <OpenWorkspace dropped={dropped} />
      <StorageKept />
    </section>
  );
}
