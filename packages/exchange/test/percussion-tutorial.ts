/**
 * A score with the music of the MusicXML 4.0 percussion tutorial: two bars for snare, kick, crash and hi-hat in a
 * bass clef, and a cowbell on one line.
 *
 * Written anew from what the tutorial's example says (w3c/musicxml,
 * docs/musicxml-reference/examples/tutorial-percussion): same parts, instruments, keys, places, heads, values and
 * voices; page layout and beams are left out.
 */

const INSTRUMENTS = [
  ['P1-X4', 'Snare Drum', 39],
  ['P1-X2', 'Kick Drum', 37],
  ['P1-X13', 'Crash Cymbal', 50],
  ['P1-X6', 'Hi-Hat Closed', 43],
] as const;

interface Note {
  readonly step: string;
  readonly octave: number;
  readonly id: string;
  readonly head: string;
}

const CRASH: Note = { step: 'B', octave: 3, id: 'P1-X13', head: '<notehead filled="no">diamond</notehead>' };
const HIHAT: Note = { step: 'B', octave: 3, id: 'P1-X6', head: '<notehead>x</notehead>' };
const SNARE: Note = { step: 'E', octave: 3, id: 'P1-X4', head: '' };
const KICK: Note = { step: 'A', octave: 2, id: 'P1-X2', head: '' };
const COWBELL: Note = { step: 'E', octave: 4, id: 'P2-X1', head: '<notehead>x</notehead>' };

function note(of: Note, duration: number, voice: number, chord = false): string {
  const place = `<display-step>${of.step}</display-step><display-octave>${of.octave}</display-octave>`;
  const type = duration === 2 ? 'quarter' : 'eighth';
  return `<note>${chord ? '<chord/>' : ''}<unpitched>${place}</unpitched><duration>${duration}</duration><instrument id="${of.id}"/><voice>${voice}</voice><type>${type}</type><stem>${voice === 1 ? 'up' : 'down'}</stem>${of.head}</note>`;
}

function rest(duration: number): string {
  const place = '<display-step>G</display-step><display-octave>2</display-octave>';
  return `<note><rest>${place}</rest><duration>${duration}</duration><voice>2</voice><type>${duration === 2 ? 'quarter' : 'eighth'}</type></note>`;
}

function hands(first: Note): string {
  const backbeat = `${note(SNARE, 1, 1)}${note(HIHAT, 1, 1, true)}`;
  const hat = note(HIHAT, 1, 1);
  return `${note(first, 1, 1)}${hat}${backbeat}${hat}${hat}${hat}${backbeat}${hat}`;
}

const FEET = `<backup><duration>8</duration></backup>${note(KICK, 2, 2)}${rest(2)}${note(KICK, 1, 2)}${note(KICK, 1, 2)}${rest(1)}${note(KICK, 1, 2)}`;

function attributes(clef: string): string {
  return `<attributes><divisions>2</divisions><key><fifths>0</fifths><mode>major</mode></key><time symbol="common"><beats>4</beats><beat-type>4</beat-type></time>${clef}</attributes><sound tempo="120"/>`;
}

function part(id: string, clef: string, bars: readonly string[]): string {
  const measures = bars.map(
    (bar, i) => `<measure number="${i + 1}">${i === 0 ? attributes(clef) : ''}${bar}</measure>`,
  );
  return `<part id="${id}">${measures.join('\n')}</part>`;
}

function scorePart(
  id: string,
  name: string,
  instruments: readonly (readonly [string, string, number])[],
): string {
  const named = instruments.map(
    ([each, label]) =>
      `<score-instrument id="${each}"><instrument-name>${label}</instrument-name></score-instrument>`,
  );
  const midi = instruments.map(
    ([each, , key]) =>
      `<midi-instrument id="${each}"><midi-channel>10</midi-channel><midi-program>1</midi-program><midi-unpitched>${key}</midi-unpitched></midi-instrument>`,
  );
  return `<score-part id="${id}"><part-name>${name}</part-name>${named.join('')}${midi.join('')}</score-part>`;
}

const COWBELLS = note(COWBELL, 2, 1).repeat(4);

/** The text of the score. */
export const PERCUSSION_TUTORIAL = `<?xml version="1.0" encoding="UTF-8"?>
<score-partwise version="4.0">
<part-list>${scorePart('P1', 'Drums', INSTRUMENTS)}${scorePart('P2', 'Cowbell', [['P2-X1', 'Cowbell', 57]])}</part-list>
${part('P1', '<instruments>4</instruments><clef><sign>F</sign><line>4</line></clef>', [`${hands(CRASH)}${FEET}`, `${hands(HIHAT)}${FEET}`])}
${part('P2', '<clef><sign>percussion</sign></clef>', [COWBELLS, COWBELLS])}
</score-partwise>
`;
