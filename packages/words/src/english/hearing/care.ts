/** Ears and body, in English. */

/** Words of `care`. */
export const care = {
  title: 'Ears and body',
  first: 'Local rules and the advice of a licensed practitioner come before anything said here.',
  protect: 'Drums are loud. Wear ear protection that fits, and keep the recording no louder than you need.',
  ringing: 'If your ears ring or sounds seem dull after playing, stop for today and give them quiet.',
  warmUp: 'Begin slow and soft, and sit so that nothing has to stretch.',
  pain: 'Stop when something hurts. Do not play through pain; if it stays or comes back, see a licensed practitioner.',
  rest: 'Time for a break: sticks down, stand up, let hands and ears rest.',
  later: 'Later',
  exposure: 'How long at this level',
  level: 'Level at the ear',
  db: '{$db :number} dBA',
  meter: 'Measure it with a sound level meter where your ears are; a full drum set is often 95 to 110 dBA.',
  whose: 'Whose ears',
  listeners: {
    adult: 'adult',
    child: 'child, or sensitive ears',
  },
  left: '.input {$span :string} .match $span week {{At {$db :number} dBA about {$time} are left this week, ear protection not counted.}} * {{At {$db :number} dBA about {$time} are left today, ear protection not counted.}}',
  usedUp: 'At {$db :number} dBA the recommended time is used up; play on a pad or without sound.',
  source: 'By NIOSH 98-126 for a day and WHO-ITU H.870 for a week. Information, not medical advice.',
} as const;
