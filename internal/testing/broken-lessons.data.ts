/**
 * Broken lesson files and exactly what is said of each: line:column, severity, field, found, expected, repair.
 * Source: slips that beginners of YAML and of text tablature make (common practice).
 */
export interface BrokenLesson {
  readonly name: string;
  readonly text: string;
  readonly problems: readonly string[];
}

/** The broken files. */
export const BROKEN_LESSONS: readonly BrokenLesson[] = [
  {
    name: 'an empty file',
    text: '',
    problems: [
      '1:1: error: found nothing, expected a lesson: keys such as title, meter, tempo, groove and exercises',
    ],
  },
  {
    name: 'a list instead of a lesson',
    text: '- x x x x\n',
    problems: [
      '1:1: error: found a list, expected a lesson: keys such as title, meter, tempo, groove and exercises',
    ],
  },
  {
    name: 'a text instead of a lesson',
    text: 'First swing\n',
    problems: [
      '1:1: error: found "First swing", expected a lesson: keys such as title, meter, tempo, groove and exercises',
    ],
  },
  {
    name: 'a score of another program instead of a lesson',
    text: '<score-partwise/>\n',
    problems: [
      '1:1: error: found "<score-partwise/>", expected a lesson: keys such as title, meter, tempo, groove and exercises (MusicXML and MIDI files are imported on the desk: shedbook serve)',
    ],
  },
  {
    name: 'an unclosed quote',
    text: 'title: "First swing\nby: Oda\n',
    problems: [
      '1:8: error: found a quote or bracket that is not closed, expected its closing quote or bracket',
    ],
  },
  {
    name: 'a backslash in quotes',
    text: 'title: "a\\q"\n',
    problems: [
      '1:10: error: found a backslash before a sign that it does not go with, expected two backslashes for one, or single quotes round the text',
    ],
  },
  {
    name: 'two lessons in one file',
    text: 'title: One\n---\ntitle: Two\n',
    problems: [
      '2:1: error: found another document, after a line of "---" or "...", expected one lesson a file',
    ],
  },
  {
    name: 'a sign that begins no text',
    text: 'title: @home\n',
    problems: [
      '1:8: error: found a sign that cannot stand here, expected a key and its value, or a list in which every entry begins with "- " (put quotes around the text)',
    ],
  },
  {
    name: 'a tab for indentation',
    text: 'title: First swing\ntempo:\n\tstart: 80\n',
    problems: ['3:1: error: found a tab, expected spaces for indentation'],
  },
  {
    name: 'a key given twice',
    text: 'title: First swing\ntempo: 80\ntempo: 90\n',
    problems: ['3:1: error: found a key that stands above already, expected each key once'],
  },
  {
    name: 'a colon inside a text',
    text: 'title: Swing: first steps\n',
    problems: [
      '1:8: error: found ": " inside a text, expected one ": ", after the key (put quotes around the text)',
    ],
  },
  {
    name: 'an alias',
    text: 'title: *first\n',
    problems: [
      '1:8: error: found an alias ("*"), expected the text itself: lessons have no aliases (put quotes around a text that starts with "*")',
    ],
  },
  {
    name: 'a bracket that is not closed',
    text: 'title: First swing\nvocabulary: [x.., ..x\n',
    problems: [
      '3:1: error: found a line that is not indented like its neighbours, or a bracket that is not closed, expected keys of one map under each other and every bracket closed',
    ],
  },
  {
    name: 'no title',
    text: 'meter: 4/4\n',
    problems: ['1:1: error: title: found nothing, expected a title'],
  },
  {
    name: 'an empty title',
    text: 'title: ""\n',
    problems: ['1:9: error: title: found an empty text, expected a title'],
  },
  {
    name: 'a title that is a list',
    text: 'title: [First, swing]\n',
    problems: ['1:8: error: title: found a list, expected a title'],
  },
  {
    name: 'a misspelt key',
    text: 'title: First swing\nexcercises:\n  - x x x x\n',
    problems: [
      '2:1: error: excercises: found unknown key "excercises", expected one of version, title, id, from, by, text, media, setUp, meter, tempo, feel, playedWith, groove, lead, comping, balance, exerciseBalance, limbs, how, vocabulary, exercises, forms, layers, compose, sections, sheet, practicePage (did you mean "exercises"?)',
    ],
  },
  {
    name: 'a key from another word list',
    text: 'title: First swing\nmetre: 3/4\n',
    problems: [
      '2:1: error: metre: found unknown key "metre", expected one of version, title, id, from, by, text, media, setUp, meter, tempo, feel, playedWith, groove, lead, comping, balance, exerciseBalance, limbs, how, vocabulary, exercises, forms, layers, compose, sections, sheet, practicePage (did you mean "meter"?)',
    ],
  },
  {
    name: 'a key that is near nothing',
    text: 'title: First swing\nlaunchpad: 4\n',
    problems: [
      '2:1: error: launchpad: found unknown key "launchpad", expected one of version, title, id, from, by, text, media, setUp, meter, tempo, feel, playedWith, groove, lead, comping, balance, exerciseBalance, limbs, how, vocabulary, exercises, forms, layers, compose, sections, sheet, practicePage',
    ],
  },
  {
    name: 'a meter that does not exist',
    text: 'title: First swing\nmeter: 4/5\n',
    problems: ['2:8: error: meter: found "4/5", expected a meter such as 4/4, 3/4, 6/8, 12/8 or 2+2+3/8'],
  },
  {
    name: 'a meter that YAML reads as a number',
    text: 'title: First swing\nmeter: 4\n',
    problems: ['2:8: error: meter: found 4, expected a meter such as 4/4, 3/4, 6/8, 12/8 or 2+2+3/8'],
  },
  {
    name: 'a tempo in words',
    text: 'title: First swing\ntempo: medium\n',
    problems: [
      '2:8: error: tempo: found "medium", expected a tempo in quarter notes a minute such as 80, or start, goal and step',
    ],
  },
  {
    name: 'a tempo out of range',
    text: 'title: First swing\ntempo: 800\n',
    problems: ['2:8: error: tempo: found 800, expected quarter notes a minute, a number from 20 to 400'],
  },
  {
    name: 'a goal slower than the start',
    text: 'title: First swing\ntempo: {start: 120, goal: 80}\n',
    problems: [
      '2:27: error: tempo.goal: found goal 80, expected a goal no slower than the start, 120 (exchange start and goal)',
    ],
  },
  {
    name: 'a tempo without its start',
    text: 'title: First swing\ntempo:\n  goal: 120\n',
    problems: [
      '3:3: error: tempo.start: found nothing, expected quarter notes a minute, a number from 20 to 400',
    ],
  },
  {
    name: 'a misspelt key inside tempo',
    text: 'title: First swing\ntempo: {start: 80, gaol: 120}\n',
    problems: [
      '2:20: error: tempo.gaol: found unknown key "gaol", expected one of start, goal, step (did you mean "goal"?)',
    ],
  },
  {
    name: 'a feel in another word',
    text: 'title: First swing\nfeel: straight\n',
    problems: [
      '2:7: error: feel: found "straight", expected even, triplet, by tempo, or a ratio long : short from 1:1 to 4:1 such as 1.8:1 (did you mean "even"?)',
    ],
  },
  {
    name: 'a feel that is an amount',
    text: 'title: First swing\nfeel: 66%\n',
    problems: [
      '2:7: error: feel: found "66%", expected even, triplet, by tempo, or a ratio long : short from 1:1 to 4:1 such as 1.8:1 (did you mean "1.9:1"?)',
    ],
  },
  {
    name: 'a ratio past 4:1',
    text: 'title: First swing\nfeel: 5:1\n',
    problems: [
      '2:7: error: feel: found "5:1", expected even, triplet, by tempo, or a ratio long : short from 1:1 to 4:1 such as 1.8:1',
    ],
  },
  {
    name: 'a ratio short : long',
    text: 'title: First swing\nfeel: 1:2\n',
    problems: [
      '2:7: error: feel: found "1:2", expected even, triplet, by tempo, or a ratio long : short from 1:1 to 4:1 such as 1.8:1 (did you mean "2:1"?)',
    ],
  },
  {
    name: 'a voice that is not on the set',
    text: 'title: First swing\ngroove:\n  gong: x x x x\n',
    problems: [
      '3:3: error: groove.gong: found unknown key "gong", expected one of ride, hihat, hihat-open, hihat-foot, bass, snare, sidestick, rimshot, crash, tom-high, tom-mid, tom-low, tom-floor, splash, china, cowbell, clap',
    ],
  },
  {
    name: 'a misspelt voice',
    text: 'title: First swing\ngroove:\n  hi-hat: x x x x\n',
    problems: [
      '3:3: error: groove.hi-hat: found unknown key "hi-hat", expected one of ride, hihat, hihat-open, hihat-foot, bass, snare, sidestick, rimshot, crash, tom-high, tom-mid, tom-low, tom-floor, splash, china, cowbell, clap (did you mean "hihat"?)',
    ],
  },
  {
    name: 'too few beats in the groove',
    text: 'title: First swing\ngroove:\n  ride: x x.x x\n',
    problems: [
      '3:9: error: groove.ride: found 3 beats, expected 4 beats in a bar of 4/4 (fill the bar: "." is a silent beat)',
    ],
  },
  {
    name: 'a hyphen for a silent slot',
    text: 'title: First swing\ngroove:\n  ride: x x-x x x.x\n',
    problems: [
      '3:12: error: groove.ride: found "-", expected one of the marks . ~ x X g f F d D b B o O s S r R w W (write ".")',
    ],
  },
  {
    name: 'a mark that the voice cannot play',
    text: 'title: First swing\ngroove:\n  ride: x s x s\n',
    problems: [
      '3:11: error: groove.ride: found mark "s" on ride, expected one of . x X g b B',
      '3:15: error: groove.ride: found mark "s" on ride, expected one of . x X g b B',
    ],
  },
  {
    name: 'a level in an unknown word',
    text: 'title: First swing\ngroove:\n  bass: {pattern: x x x x, level: soft}\n',
    problems: [
      '3:35: error: groove.bass.level: found "soft", expected a level in dB from -60 to 12, or one of ppp, pp, p, mp, mf, f, ff, fff, feathered',
    ],
  },
  {
    name: 'a level out of range',
    text: 'title: First swing\nbalance:\n  bass: 40\n',
    problems: ['3:9: error: balance.bass: found 40, expected a level in dB, a number from -60 to 12'],
  },
  {
    name: 'a lead voice that the groove does not have',
    text: 'title: First swing\ngroove:\n  hihat: x x x x\nlead: ride\n',
    problems: ['4:7: error: lead: found "ride", expected a voice of the groove: hihat'],
  },
  {
    name: 'an unknown set-up',
    text: 'title: First swing\nsetUp: lefthanded\n',
    problems: [
      '2:8: error: setUp: found "lefthanded", expected one of right-handed, left-handed (did you mean "left-handed"?)',
    ],
  },
  {
    name: 'an unknown limb',
    text: 'title: First swing\nlimbs:\n  hihat: left hand\n',
    problems: [
      '3:10: error: limbs.hihat: found "left hand", expected one of lead hand, other hand, lead foot, other foot (did you mean "lead hand"?)',
    ],
  },
  {
    name: 'a cell with nine slots',
    text: 'title: First swing\nvocabulary: [x........, x]\n',
    problems: [
      '2:14: error: vocabulary[1]: found "x........", expected 1, 2, 3, 4, 5, 6, 7 or 8 marks of . x X g f F d D b B o O s S r R w W, or the name of a cell',
    ],
  },
  {
    name: 'beats, cells and an ending too fine for a 64th',
    text: 'title: Fine\nmeter: 2/32\nvocabulary: [xxxx]\ngroove:\n  ride: xxxx xx\nexercises:\n  - xx xxxxxx\nforms:\n  once:\n    sections:\n      - pattern: 1\n        ending: { voices: snare, cell: ...x }\n',
    problems: [
      '3:14: error: vocabulary[1]: found "xxxx", expected 1, 2 or 3 marks of . x X g f F d D b B o O s S r R w W, or the name of a cell',
      '5:9: error: groove.ride: found 4 places in one beat ("xxxx"), expected 1, 2 or 3 places a beat',
      '7:8: error: exercises[1]: found 6 places in one beat ("xxxxxx"), expected 1, 2 or 3 places a beat',
      '12:40: error: forms.once.sections[1].ending.cell: found 4 places in one beat ("...x"), expected 1, 2 or 3 places a beat',
    ],
  },
  {
    name: 'a misspelt cell name',
    text: 'title: First swing\nvocabulary: [midle triplet]\n',
    problems: [
      '2:14: error: vocabulary[1]: found "midle triplet", expected 1, 2, 3, 4, 5, 6, 7 or 8 marks of . x X g f F d D b B o O s S r R w W, or the name of a cell (did you mean "middle triplet"?)',
    ],
  },
  {
    name: 'a vocabulary that is not a list',
    text: 'title: First swing\nvocabulary: ..x\n',
    problems: ['2:13: error: vocabulary: found "..x", expected a list of cells such as ["...", "..x"]'],
  },
  {
    name: 'too many beats in an exercise',
    text: 'title: First swing\nexercises:\n  - x.. ..x x.x ... x..\n',
    problems: [
      '3:21: error: exercises[1]: found 5 beats, expected 4 beats in a bar of 4/4 (end the bar with "|" or take beats out)',
    ],
  },
  {
    name: 'two bars run together',
    text: 'title: First swing\nexercises:\n  - x.. ..x x.x ... x.. ..x x.x ...\n',
    problems: [
      '3:21: error: exercises[1]: found 8 beats, expected 4 beats in a bar of 4/4 (end the bar with "|" or take beats out)',
    ],
  },
  {
    name: 'beats run together',
    text: 'title: First swing\nexercises:\n  - x....xx.x...\n',
    problems: [
      '3:5: error: exercises[1]: found 12 places in one beat ("x....xx.x..."), expected 1, 2, 3, 4, 5, 6, 7 or 8 places a beat (separate the beats with spaces)',
      '3:5: error: exercises[1]: found 1 beat, expected 4 beats in a bar of 4/4 (fill the bar: "." is a silent beat)',
    ],
  },
  {
    name: 'an unknown mark in an exercise',
    text: 'title: First swing\nexercises:\n  - x.. ..y x.x ...\n',
    problems: [
      '3:11: error: exercises[1]: found "y", expected one of the marks . ~ x X g f F d D b B o O s S r R w W',
    ],
  },
  {
    name: 'a bar without beats',
    text: 'title: First swing\nexercises:\n  - x x x x |\n',
    problems: [
      '3:14: error: exercises[1]: found a bar without beats, expected 4 beats in a bar of 4/4 (fill the bar: "." is a silent beat)',
    ],
  },
  {
    name: 'an exercise that is a number',
    text: 'title: First swing\nexercises:\n  - 4\n',
    problems: [
      '3:5: error: exercises[1]: found 4, expected a pattern text, or pattern with name, sticking, notes and keep',
    ],
  },
  {
    name: 'an exercise left empty',
    text: 'title: First swing\nexercises:\n  -\n  - x x x x\n',
    problems: [
      '3:4: error: exercises[1]: found nothing, expected a pattern text, or pattern with name, sticking, notes and keep',
    ],
  },
  {
    name: 'an exercise without its pattern',
    text: 'title: First swing\nexercises:\n  - name: warm-up\n',
    problems: [
      '3:5: error: exercises[1].pattern: found nothing, expected a pattern text, or a pattern text for each voice',
    ],
  },
  {
    name: 'voices of unequal length',
    text: 'title: First swing\nexercises:\n  - pattern:\n      snare: x x x x\n      bass: x . . . | . . x .\n',
    problems: [
      '4:7: error: exercises[1].pattern: found voices of 2 and 1 bars, expected the same number of bars for every voice',
    ],
  },
  {
    name: 'a sticking that is too short',
    text: 'title: First swing\nexercises:\n  - {pattern: x x x x, sticking: R L R}\n',
    problems: ['3:34: error: exercises[1].sticking: found 3 hands, expected 4, one for each stroke'],
  },
  {
    name: 'a sticking in small letters',
    text: 'title: First swing\nexercises:\n  - {pattern: x x x x, sticking: r l r l}\n',
    problems: [
      '3:34: error: exercises[1].sticking: found "r", expected R, L or B (both) for each stroke (write "R")',
    ],
  },
  {
    name: 'a form without sections',
    text: 'title: First swing\nforms:\n  mine: {repeat: 2}\n',
    problems: [
      '3:9: error: forms.mine.sections: found nothing, expected a list of sections such as "- pattern: 4"',
    ],
  },
  {
    name: 'a section that plays two things',
    text: 'title: First swing\nforms:\n  mine:\n    sections:\n      - {pattern: 4, time: 2}\n',
    problems: [
      '5:9: error: forms.mine.sections[1]: found pattern and time, expected one of pattern, time or rest with a number of bars (make a section of each)',
    ],
  },
  {
    name: 'a section without bars',
    text: 'title: First swing\nforms:\n  mine:\n    sections:\n      - ending: crash\n',
    problems: [
      '5:9: error: forms.mine.sections[1]: found a section without bars, expected one of pattern, time or rest with a number of bars',
    ],
  },
  {
    name: 'an ending on a voice that does not exist',
    text: 'title: First swing\nforms:\n  mine:\n    sections:\n      - {pattern: 4, ending: rimshot + cymbal}\n',
    problems: [
      '5:40: error: forms.mine.sections[1].ending: found "cymbal", expected voices joined by +: ride, hihat, hihat-open, hihat-foot, bass, snare, sidestick, rimshot, crash, tom-high, tom-mid, tom-low, tom-floor, splash, china, cowbell, clap',
    ],
  },
  {
    name: 'an ending on a beat that the bar does not have',
    text: 'title: First swing\nforms:\n  mine:\n    sections:\n      - {pattern: 4, ending: {voices: crash, beat: 5}}\n',
    problems: ['5:52: error: forms.mine.sections[1].ending.beat: found beat 5, expected a beat from 1 to 4'],
  },
  {
    name: 'an ending without a stroke',
    text: 'title: First swing\nforms:\n  mine:\n    sections:\n      - {pattern: 4, ending: {voices: crash, cell: ...}}\n',
    problems: [
      '5:52: error: forms.mine.sections[1].ending.cell: found "...", expected a cell with a stroke that its voices can play, such as "..X"',
    ],
  },
  {
    name: 'a negative number of bars',
    text: 'title: First swing\nforms:\n  mine:\n    sections:\n      - pattern: -4\n',
    problems: [
      '5:18: error: forms.mine.sections[1].pattern: found -4, expected bars, a whole number from 1 to 256',
    ],
  },
  {
    name: 'a layer that the groove does not have',
    text: 'title: First swing\nlayers: [ride, tom-low, pattern]\n',
    problems: ['2:16: error: layers[2]: found "tom-low", expected one of ride, hihat-foot, bass, pattern'],
  },
  {
    name: 'an unknown paper',
    text: 'title: First swing\nsheet:\n  paper: A3\n',
    problems: [
      '3:10: error: sheet.paper: found "A3", expected one of A4, Letter, A5, tablet (did you mean "A4"?)',
    ],
  },
  {
    name: 'yes where true is meant',
    text: 'title: First swing\nsheet:\n  counts: yes\n',
    problems: ['3:11: error: sheet.counts: found "yes", expected true or false (write true)'],
  },
  {
    name: 'an unknown weight of the composer',
    text: 'title: First swing\ncompose:\n  weights: {syncopation: 2}\n',
    problems: [
      '3:13: error: compose.weights.syncopation: found unknown key "syncopation", expected one of alone, foot, lead, switch, unison, interlock, pulse, lhl, wnbd, offBeatness, keith, density, silence, memory, change, speed, dynamics',
    ],
  },
  {
    name: 'a cell of the composer that is none',
    text: 'title: First swing\ncompose:\n  limits: {start: [x?x]}\n',
    problems: ['3:20: error: compose.limits.start[1]: found "x?x", expected a cell such as "..x"'],
  },
  {
    name: 'a later version',
    text: 'version: 9\ntitle: First swing\n',
    problems: [
      '1:10: error: version: found version 9, expected version 2 (this lesson was written by a later Shedbook: update this one)',
    ],
  },
  {
    name: 'many problems at once',
    text: 'titel: First swing\nmeter: 3/4\nfeel: swing\ngroove:\n  ride: x x.x x x.x\n  base: x . .\nexercises:\n  - x y x\n  - {pattern: x x x, sticking: R L}\n',
    problems: [
      '1:1: error: title: found nothing, expected a title',
      '1:1: error: titel: found unknown key "titel", expected one of version, title, id, from, by, text, media, setUp, meter, tempo, feel, playedWith, groove, lead, comping, balance, exerciseBalance, limbs, how, vocabulary, exercises, forms, layers, compose, sections, sheet, practicePage (did you mean "title"?)',
      '3:7: error: feel: found "swing", expected even, triplet, by tempo, or a ratio long : short from 1:1 to 4:1 such as 1.8:1 (did you mean "triplet"?)',
      '5:17: error: groove.ride: found 4 beats, expected 3 beats in a bar of 3/4 (end the bar with "|" or take beats out)',
      '6:3: error: groove.base: found unknown key "base", expected one of ride, hihat, hihat-open, hihat-foot, bass, snare, sidestick, rimshot, crash, tom-high, tom-mid, tom-low, tom-floor, splash, china, cowbell, clap (did you mean "bass"?)',
      '8:7: error: exercises[1]: found "y", expected one of the marks . ~ x X g f F d D b B o O s S r R w W',
      '9:32: error: exercises[2].sticking: found 2 hands, expected 3, one for each stroke',
    ],
  },
];
