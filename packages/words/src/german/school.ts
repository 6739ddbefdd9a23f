/** Eine Schule: anmelden, der Brief an eine Lehrkraft, die Liste der Lehrkräfte; in German. */
import type * as english from '../english/school.ts';
import { translation } from '../message/translated.ts';

/** Every word of it. */
export const school = translation<typeof english.school>()({
  signIn: {
    title: 'Anmelden',
    lead: 'Dieses Pult erreichen auch andere, darum fragt es, wer kommt.',
    name: 'Name',
    passphrase: 'Passphrase',
    wrong: 'Dieser Name und diese Passphrase gehören nicht zusammen.',
  },
  join: {
    title: 'Du bist eingeladen',
    lead: 'Wähle eine Passphrase, die sonst niemand kennt. Mit ihr und deinem Namen meldest du dich von nun an an.',
    passphrase: 'Deine Passphrase',
    again: 'Noch einmal dieselbe',
    short: 'Sie braucht mindestens {$least :integer} Zeichen; ein Satz merkt sich leicht.',
    differ: 'Die beiden sind nicht gleich.',
    done: 'Eintreten',
  },
  teachers: {
    title: 'Lehrkräfte',
    lead: 'Jede Lehrkraft hat eigene Schüler, die keine andere sieht; die Leitung liest hier ihre Namen und sonst nichts. Lektionen und Bücher stehen für alle in einem Regal; ändern kann sie, wer sie gemacht hat, und die Leitung.',
    unnamed: 'Noch kein Name',
    you: '{$name} (du)',
    roles: { head: 'Leitung', teacher: 'Lehrkraft' },
    roleOf: 'Was {$name} ist',
    students: '.input {$n :integer} .match $n 0 {{keine Schüler}} one {{{$n} Schüler}} * {{{$n} Schüler}}',
    notHere: 'eingeladen, noch nicht da',
    invite: 'Lehrkraft einladen',
    name: 'Name der Lehrkraft',
    rename: 'Umbenennen',
    renameThis: '{$name} umbenennen',
    again: 'Neuer Brief',
    againThis: 'Neuer Brief für {$name}',
    letter: 'Brief für {$name}',
    once: 'Schicke diese Adresse {$name} und sonst niemandem. Sie öffnet sich einmal, binnen zwei Wochen, um eine Passphrase zu wählen; gezeigt wird sie nur jetzt.',
    remove: 'Verabschieden',
    removeThis: '{$name} verabschieden',
    reallyRemove: '{$name} kommt nicht mehr herein. Schüler, Lektionen und Bücher gehören dann dir.',
    removed: '{$name} kommt nicht mehr herein.',
    saved: 'Aufgehoben.',
    roster: 'Schüler von {$name}',
    handTo: 'Wer {$student} unterrichtet',
    handed: '{$student} ist von nun an bei {$name}, mit allem, was aufgehoben ist.',
  },
});
