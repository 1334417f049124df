/** Tables whose rows a person may edit on a page, in the order in which they are shown. */
export const editedTables = [
  'limits',
  'parts',
  'installations',
  'events',
  'plan',
  'characteristics',
] as const;

export type EditedTable = (typeof editedTables)[number];
