/** Whether a verdict is the one that a story asks for. */

/** What is wrong with a verdict, in words; nothing where it is right. */
export function faultsOf(story, { is, about }) {
  const whats = about.map(({ what }) => what);
  const uneven = about.filter(({ what }) => what === 'uneven').map(({ voice }) => voice);
  const faults = [];
  if (![story.is].flat().includes(is)) faults.push(`is ${is}, not ${[story.is].flat().join(' or ')}`);
  if (is === 'clean' && whats.some((what) => what !== 'offset' && what !== 'too-little-heard'))
    faults.push('clean, and yet about something');
  if (story.first && ![story.first].flat().includes(whats[0])) faults.push(`not about ${story.first} first`);
  if (story.voice && about[0]?.voice !== story.voice) faults.push(`not about the ${story.voice} first`);
  for (const what of story.has ?? []) if (!whats.includes(what)) faults.push(`not about ${what}`);
  for (const what of story.not ?? []) if (whats.includes(what)) faults.push(`about ${what}`);
  if (story.unevenOnly && uneven.join() !== story.unevenOnly.join()) faults.push(`uneven: ${uneven.join()}`);
  return faults;
}
