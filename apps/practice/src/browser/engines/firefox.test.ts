import { it } from 'vitest';
import { FIREFOX } from '../../../../../internal/testing/engines/firefox.ts';
import { tellPractice } from '../../../../../internal/testing/engines/practice-story.ts';

it('[ST440] goes from the first visit to an evening without a network in Firefox', () =>
  tellPractice(FIREFOX));
