/** What the coach tells teachers and students, as facts. */
import type { Fact, PlaceFact, SidedLimb, Voice } from '@shedbook/core';

/** Where an exercise went wrong most often. */
export interface SoreSpotFact extends Fact {
  readonly fact: 'sore-spot';
  readonly limb: SidedLimb;
  readonly voice: Voice;
  readonly place: PlaceFact;
}

/** A cell by itself. */
export interface CellFact extends Fact {
  readonly fact: 'cell';
  readonly cell: string;
}

/** Going from one cell to the next. */
export interface CellMoveFact extends Fact {
  readonly fact: 'cell-move';
  readonly from: string;
  readonly to: string;
}

/** A cell or move of one limb alone. */
export interface SkillAloneFact extends Fact {
  readonly fact: 'skill-alone';
  readonly cells: CellFact | CellMoveFact;
  readonly limb: SidedLimb;
}

/** A cell or move of one limb while others play. */
export interface SkillOverFact extends Fact {
  readonly fact: 'skill-over';
  readonly cells: CellFact | CellMoveFact;
  readonly limb: SidedLimb;
  readonly over: readonly SidedLimb[];
}

/** A cell or move that both hands clap. */
export interface SkillClappedFact extends Fact {
  readonly fact: 'skill-clapped';
  readonly cells: CellFact | CellMoveFact;
}

/** A cell or move of two hands in turn, as it is written with them. */
export interface SkillHandsFact extends Fact {
  readonly fact: 'skill-hands';
  readonly cells: CellFact | CellMoveFact;
  /** The hands of its strokes in turn, such as `R L R`. */
  readonly hands: string;
}

/** What an exercise trains. */
export type SkillFact = SkillAloneFact | SkillOverFact | SkillClappedFact | SkillHandsFact;

/** A new exercise needs a skill, and so much else that is new. */
export interface NeedsSkillFact extends Fact {
  readonly fact: 'needs-skill';
  /** Number of other skills that are new. */
  readonly more: number;
}

/** An exercise is to be played again. */
export interface AgainFact extends Fact {
  readonly fact: 'again-from';
  readonly bpm: number;
}

/** A skill does not hold, and what follows. */
export interface SeldomHoldsFact extends Fact {
  readonly fact: 'seldom-holds';
  readonly skill: SkillFact;
  /** Times that it holds in a hundred. */
  readonly percent: number;
  readonly follows: NeedsSkillFact | AgainFact;
}

/** An exercise needs nothing that is new, is the groove alone, or is clapped and stands before nothing. */
export interface AddsNothingFact extends Fact {
  readonly fact: 'adds-nothing' | 'adds-groove' | 'adds-clapping';
}

/** An exercise is counted and clapped before another one. */
export interface AddsCountFact extends Fact {
  readonly fact: 'adds-count';
  /** Number of the first exercise that needs its subdivision. */
  readonly exercise: number;
}

/** An exercise adds one skill. */
export interface AddsSkillFact extends Fact {
  readonly fact: 'adds-skill';
  readonly skill: SkillFact;
}

/** An exercise adds several skills. */
export interface AddsSkillsFact extends Fact {
  readonly fact: 'adds-skills';
  readonly skill: SkillFact;
  /** Number of skills beside it. */
  readonly more: number;
}

/** Somebody who has played nothing begins where a lesson begins: the one that is theirs, or that begins easiest. */
export interface BeginFact extends Fact {
  /** The lesson is theirs or the only one; else it begins easiest of the swing, or of all, on the desk. */
  readonly fact: 'begin-lesson' | 'begin-swing' | 'begin-easiest';
  /** Its title. */
  readonly lesson: string;
}

/**
 * The next of a lesson, whether something of it was heard or only set, or the new one nearest to what is known; beside
 * what is under way and not clean yet, or where all that was heard goes well.
 */
export interface NextNewFact extends Fact {
  readonly fact: 'next-on-sheet' | 'beside-next' | 'after-set' | 'nearest-new' | 'beside-nearest';
  readonly adds: AddsNothingFact | AddsCountFact | AddsSkillFact | AddsSkillsFact;
}

/** An exercise was not steady when it was last played. */
export interface NotSteadyFact extends Fact {
  readonly fact: 'not-steady';
  readonly bpm: number;
}

/** The same, with the place to listen for. */
export interface NotSteadyThereFact extends Fact {
  readonly fact: 'not-steady-there';
  readonly sore: SoreSpotFact;
  readonly bpm: number;
}

/** Why a teacher would give an exercise next. */
export type SuggestionFact = SeldomHoldsFact | BeginFact | NextNewFact | NotSteadyFact | NotSteadyThereFact;

/** The teacher set this; pinned, it stands in every plan. */
export interface AssignedFact extends Fact {
  readonly fact: 'teacher-set' | 'teacher-pinned';
}

/** How far something that was set is to come. */
export interface AimFact extends Fact {
  readonly fact: 'up-to';
  /** In beats of the meter a minute. */
  readonly bpm: number;
}

/** When something that was set is to be ready, and at which tempo where one was named. */
export interface AimByFact extends Fact {
  readonly fact: 'up-to-by';
  /** In beats of the meter a minute. */
  readonly bpm: number;
  /** Days from today, not past. */
  readonly day: number;
}

/** When something that was set is to be ready, at whatever tempo. */
export interface ReadyByFact extends Fact {
  readonly fact: 'ready-by';
  /** Days from today, not past. */
  readonly day: number;
}

/** The teacher set this up to a tempo, for a day, or both. */
export interface AimedFact extends Fact {
  readonly fact: 'teacher-aims';
  readonly what: AssignedFact;
  readonly aim: AimFact | AimByFact | ReadyByFact;
}

/** The teacher set this and wrote something to it. */
export interface NotedFact extends Fact {
  readonly fact: 'teacher-noted';
  readonly what: AssignedFact | AimedFact;
  readonly note: string;
}

/** An exercise was played before, and how it stood then. */
export interface PlayedBeforeFact extends Fact {
  readonly fact: 'played-shaky' | 'played-firm' | 'played-learning';
  /** Days from today; negative is past. */
  readonly day: number;
}

/** An exercise was played before, and was clean at a tempo. */
export interface PlayedCleanFact extends Fact {
  readonly fact: 'played-clean';
  /** Days from today; negative is past. */
  readonly day: number;
  readonly bpm: number;
  readonly goalBpm: number;
}

/** An exercise was played before, and the place to listen for. */
export interface ListenForFact extends Fact {
  readonly fact: 'listen-for';
  readonly what: PlayedBeforeFact | PlayedCleanFact;
  readonly sore: SoreSpotFact;
}

/** What needs no values: the kinds of a plan's items. */
export interface PlanKindFact extends Fact {
  readonly fact:
    | 'new-today'
    | 'once-more'
    | 'warm-up'
    | 'time-alone'
    | 'play-freely'
    | 'rest-now'
    | 'apart'
    | 'put-back';
}

/** What a section stands on, which the student does not have yet. */
export interface ComesFirstFact extends Fact {
  readonly fact: 'comes-first';
  /** The section that it comes before, or its lesson. */
  readonly before: string;
}

/** An exercise is stuck and taken apart, and the place that it is about. */
export interface ApartThereFact extends Fact {
  readonly fact: 'apart-there';
  readonly sore: SoreSpotFact;
}

/** Why something is in a plan. */
export type PlanReasonFact =
  | ApartThereFact
  | ComesFirstFact
  | AimedFact
  | AssignedFact
  | NotedFact
  | PlayedBeforeFact
  | PlayedCleanFact
  | ListenForFact
  | PlanKindFact;

/** What an exercise is called. */
export interface ExerciseTitleFact extends Fact {
  readonly fact: 'exercise-title';
  readonly name: string;
}

/** The groove of a lesson without an exercise. */
export interface GrooveTitleFact extends Fact {
  readonly fact: 'groove-title';
  readonly lesson: string;
}

/** A break. */
export interface BreakTitleFact extends Fact {
  readonly fact: 'break-title';
}

/** What an item of a plan is called. */
export type PlanTitleFact = ExerciseTitleFact | GrooveTitleFact | BreakTitleFact;

/** Why a plan is short or empty. */
export interface ShortPlanFact extends Fact {
  readonly fact: 'no-time-today' | 'no-lesson-yet';
}

/** Exercises that are stuck and taken apart, or that the teacher set and that are gone. */
export interface CountedNoteFact extends Fact {
  readonly fact: 'taken-apart' | 'set-and-gone';
  readonly exercises: number;
}

/** What was left out of a plan. */
export type PlanNoteFact = ShortPlanFact | CountedNoteFact;

/** What was set goes on as it is: nobody has played it. */
export interface StillSetFact extends Fact {
  readonly fact: 'set-not-played';
}

/** What was set was played, and was clean at no tempo as often as that takes. */
export interface NotCleanFact extends Fact {
  readonly fact: 'set-not-clean';
  /** How many clean loops a tempo takes. */
  readonly times: number;
}

/** What was set has not come as far as it was set for. */
export interface NotThereFact extends Fact {
  readonly fact: 'set-not-there';
  /** The fastest that was clean, in beats of the meter a minute, as is what it was set for. */
  readonly bpm: number;
  readonly aimBpm: number;
}

/** What was set has come as far as it was set for, and goes on from there. */
export interface WentOnFact extends Fact {
  readonly fact: 'set-clean' | 'set-passed';
  /** In beats of the meter a minute. */
  readonly bpm: number;
  readonly aimBpm: number;
}

/** What was set is done. */
export interface DoneFact extends Fact {
  readonly fact: 'done-passed' | 'done-firm';
  /** The tempo that it holds at, in beats of the meter a minute. */
  readonly bpm: number;
}

/** Why something stands in the draft of what a student is set next. */
export type DraftReasonFact =
  | AssignedFact
  | DoneFact
  | NotCleanFact
  | NotThereFact
  | StillSetFact
  | SuggestionFact
  | WentOnFact;

/** Every fact of the coach. */
export type CoachFact =
  | AimFact
  | AimByFact
  | ReadyByFact
  | DraftReasonFact
  | SoreSpotFact
  | CellFact
  | CellMoveFact
  | SkillFact
  | NeedsSkillFact
  | AgainFact
  | AddsNothingFact
  | AddsCountFact
  | AddsSkillFact
  | AddsSkillsFact
  | SuggestionFact
  | PlanReasonFact
  | PlanTitleFact
  | PlanNoteFact;
