import { it } from 'vitest';
import { CHROMIUM } from '../../../../../internal/testing/engines/chromium.ts';
import { tellPractice } from '../../../../../internal/testing/engines/practice-story.ts';

it('[ST440] goes from the first visit to an evening without a network in Chromium', () =>
  tellPractice(CHROMIUM));
