'use client';

import { usePathname } from 'next/navigation';
import frame from '../frame/frame.module.css';
import { usePageDrop } from './usePageDrop';
import { useTakenFiles } from './useTakenFiles';

/** Files dropped on any page are opened, as on Records, which says itself what becomes of them: a browser would leave the page for the file. */
export function DropAnywhere() {
  const isRecords = /\/records\/?$/.test(usePathname());
  return isRecords ? null : <DropOnPage />;
}

const workspaceElsewhere = (file: File) => `${file.name} is a workspace file: drop it on the page Records.`;

function DropOnPage() {
  const { take, message } = useTakenFiles(workspaceElsewhere);
  const isDragging = usePageDrop(take);
  const said = isDragging ? 'Drop the files to open them. Nothing leaves the machine.' : message;
  return (
    // Without anything to say it takes no room.
    <p role="status" className={said === null ? 'visuallyHidden' : frame.notice}>
      {said}
    </p>
  );
}
