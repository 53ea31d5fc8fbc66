/** What every thread of this kind is begun with, so that it knows what it is for. */
export const siteThread = 'steadypair/site-thread/1';
