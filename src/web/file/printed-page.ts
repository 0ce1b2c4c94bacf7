/**
 * Opens an HTML page in a tab of its own, where it can be saved as well, and prints it there. Where the browser does not open
 * it, `refuse` is told what to do.
 */
export function printedPage(page: string, refuse: (sentence: string) => void): void {
  // A page from a file may not print one that has an address of its own: the tab is opened empty and written.
  const opened = window.open('');
  if (opened === null) {
    refuse('The browser has not opened the sheet: let this page open windows, and print once more.');
    return;
  }
  // eslint-disable-next-line @typescript-eslint/no-deprecated -- nothing else makes an empty tab a page with its own kind of document
  opened.document.write(page);
  opened.document.close();
  opened.print();
}
