/** What the rooms under the desk say about a lesson, in German. More special phrases stand before more general. */
import type { SaidTable } from './said.ts';

/** The table. */
export const SAID_GERMAN: SaidTable = {
  and: ' und ',
  phrases: [
    // Voices, where they stand in a sentence.
    ['open hi-hat', 'offene Hi-Hat'],
    ['hi-hat foot', 'Hi-Hat-Fuß'],
    ['hi-hat', 'Hi-Hat'],
    ['ride', 'Ride'],
    ['bass drum', 'Bassdrum'],
    ['snare', 'Snare'],
    ['side stick', 'Sidestick'],
    ['rim shot', 'Rimshot'],
    ['crash', 'Crash'],
    ['high tom', 'hohes Tom'],
    ['mid tom', 'mittleres Tom'],
    ['low tom', 'tiefes Tom'],
    // How a student stands, and what comes next.
    ['right hand', 'rechte Hand'],
    ['left hand', 'linke Hand'],
    ['right foot', 'rechter Fuß'],
    ['left foot', 'linker Fuß'],
    ['"{from!}" to "{to!}"', '„{from!}“ zu „{to!}“'],
    [
      '{skill~} in the {limb~} with {over*} holds about {n!} times in 100. {more~}',
      '{limb~}, {skill~}, dazu {over*}: gelingt etwa {n!} von 100 Mal. {more~}',
    ],
    [
      '{skill~} in the {limb~} holds about {n!} times in 100. {more~}',
      '{limb~}, {skill~}: gelingt etwa {n!} von 100 Mal. {more~}',
    ],
    ['This one needs it, and nothing else that is new.', 'Diese Übung braucht das und sonst nichts Neues.'],
    ['This one needs it, and 1 more that is new.', 'Diese Übung braucht das und noch 1 Neues.'],
    ['This one needs it, and {n!} more that are new.', 'Diese Übung braucht das und noch {n!} Neue.'],
    ['Give this one again, from {bpm!}.', 'Diese noch einmal, ab {bpm!}.'],
    ['To begin with: {adds~}.', 'Zum Anfang: {adds~}.'],
    [
      'Nothing that was heard is shaky; of what is new, this is nearest: {adds~}.',
      'Nichts Gehörtes wackelt; von dem, was neu ist, liegt das am nächsten: {adds~}.',
    ],
    ['it needs nothing that was not heard before', 'sie braucht nichts, was noch nicht zu hören war'],
    [
      'it adds {skill~} in the {limb~} with {over*} and {n!} more',
      'neu sind {limb~}, {skill~}, dazu {over*}, und noch {n!}',
    ],
    ['it adds {skill~} in the {limb~} with {over*}', 'neu ist {limb~}, {skill~}, dazu {over*}'],
    ['it adds {skill~} in the {limb~} and {n!} more', 'neu sind {limb~}, {skill~}, und noch {n!}'],
    ['it adds {skill~} in the {limb~}', 'neu ist {limb~}, {skill~}'],
    [
      'Not steady when last played: listen for the {sore~}. Again, from {bpm!}.',
      'Zuletzt wacklig, vor allem {sore~}. Noch einmal, ab {bpm!}.',
    ],
    ['Not steady when last played. Again, from {bpm!}.', 'Zuletzt wacklig. Noch einmal, ab {bpm!}.'],
    ['{first~} Listen for the {sore~}.', '{first~} Zu hören: {sore~}.'],
    ['Last played {day~} and not steady then.', 'Zuletzt {day~} gespielt, da wacklig.'],
    [
      'Last played {day~} and firm; time to see that it still is.',
      'Zuletzt {day~} gespielt, da saß sie; Zeit, nachzusehen.',
    ],
    ['Last played {day~} and on its way.', 'Zuletzt {day~} gespielt, auf dem Weg.'],
    [
      'Last played {day~} and clean at {bpm!} on the way to {goal!}.',
      'Zuletzt {day~} gespielt, sauber bei {bpm!} auf dem Weg zu {goal!}.',
    ],
    ['today', 'heute'],
    ['yesterday', 'gestern'],
    ['{n!} days ago', 'vor {n!} Tagen'],
    ['Your teacher pinned this.', 'Fest aufgegeben.'],
    ['Your teacher pinned this. {note}', 'Fest aufgegeben. {note}'],
    ['Your teacher set this.', 'Aufgegeben.'],
    ['Your teacher set this. {note}', 'Aufgegeben. {note}'],
    [
      'New today: the next on the sheet. One new thing at a time.',
      'Heute neu: die nächste auf dem Blatt. Eins nach dem anderen.',
    ],
    [
      'Once more, after something else: see what is still there.',
      'Noch einmal, nach etwas anderem: sehen, was noch da ist.',
    ],
    [
      'Warm up first: soft, relaxed, slower than you could. Set up so that nothing has to stretch.',
      'Erst aufwärmen: leise, locker, langsamer als möglich. So sitzen, dass sich nichts strecken muss.',
    ],
    [
      'Time alone: let it roll, and listen to the balance of the limbs.',
      'Nur Time: laufen lassen und auf die Balance der Hände und Füße hören.',
    ],
    ['Break', 'Pause machen'],
    [
      'Put the sticks down, stand up, let hands and ears rest.',
      'Sticks weglegen, aufstehen, Hände und Ohren ruhen lassen.',
    ],
    ['{lesson}: the groove alone', '{lesson}: nur der Groove'],
    [
      'That is enough for today; the rest of the time is yours.',
      'Das reicht für heute; die übrige Zeit gehört dir.',
    ],
    ['There is no lesson to practise from yet.', 'Noch gibt es keine Lektion zum Üben.'],
    [
      'Nothing new today: {n!} exercises are still on their way.',
      'Heute nichts Neues: {n!} Übungen sind noch auf dem Weg.',
    ],
    [
      '{n!} of the exercises that your teacher set is no longer in the lessons.',
      '{n!} der aufgegebenen Übungen steht nicht mehr in den Lektionen.',
    ],
    [
      '{n!} of the exercises that your teacher set are no longer in the lessons.',
      '{n!} der aufgegebenen Übungen stehen nicht mehr in den Lektionen.',
    ],
    ['{limb~} ({voice~}) on {place~}', '{limb~} ({voice~}) auf {place~}'],
  ],
};
