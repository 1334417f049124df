/** What is said of the copy of the site that the browser keeps. */
export const keptSiteWords = {
  kept: 'Ready for use without the network.',
  newer: 'A new version is ready. Until you reload, this page goes on as it is.',
  reload: 'Reload',
  reloadsAll: 'Every open tab of Endfloat is loaded anew.',
} as const;
