/** What a page says before it is one, where the browser is too old for it or it lies in no place to run from, in English. */

/** Instead of the page. */
export const oldBrowser = {
  old: {
    title: 'This browser is too old for this page',
    lead: 'It needs Chrome or Edge {$chrome}, Firefox {$firefox} or Safari {$safari}, or a newer one; on an iPhone or iPad, system {$system}. Update the browser or the device, or open the address on another one.',
  },
  file: {
    title: 'This page has to be opened from the web',
    lead: 'From a file it cannot play. If you are a student, ask your teacher for its address, and open that in the browser. If you are the teacher, unpack the folder on a web host, or make a private link on the desk.',
  },
  script: {
    title: 'This page needs a browser with JavaScript',
    lead: 'If you see this in a file or mail app, ask your teacher for the page’s address, and open that in the browser. If you see it in a browser, JavaScript is switched off in its settings.',
  },
  sheet: 'The printed sheet opens without all that: ',
} as const;
