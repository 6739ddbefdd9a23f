import { it } from 'vitest';
import { tellPractice } from '../../../../../internal/testing/engines/practice-story.ts';
import { WEBKIT } from '../../../../../internal/testing/engines/webkit.ts';

it('[ST440] goes from the first visit to an evening without a network in WebKit', () => tellPractice(WEBKIT));
