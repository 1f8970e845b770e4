"""What is wanted of muscles, lifts, kit and style as people say it, in the words of the clauses."""

from __future__ import annotations

from typing import Final

from setwright.solver.brief.phrase.wording.numbers import Rewrites

_WANT: Final = r"(?:i |we |he |she |client |and )?(?:want|wants|would like|'d like|'d love|need|needs|wanna|love)(?: to)?(?: (?:get|have|grow|build|bring up))?"
ASKS: Final[Rewrites] = (
    # emphasis
    (r"\bnever skip\b", "grow"),
    (
        r"\b(?:leave out|skip|drop(?![ -]?sets?)|zero|no direct|i couldn't care less about|don't care about|nothing for(?: the)?|forget|none)(?: direct)?(?: the)? ([a-z]+(?: and [a-z]+)?)(?: work)?(?: completely)?(?=[,.;]|$)",
        r"no \1",
    ),
    (
        r"\b([a-z']+(?: (?!and\b)[a-z']+)?(?: and [a-z']+)?) (?:lag(?:s|ging)?(?: behind)?|needs? work|emphasis|first|up|focus(?:sed|ed)?|priority|bigger|wider|stronger)(?=[,.;]|$| \d)",
        r"grow \1",
    ),
    (r"\bi want my ([a-z ]+?) to grow\b", r"grow \1"),
    (r"\b(?:all|everything) else (?:just kept|at maintenance|on hold)\b|\bleave the rest as it is\b", "hold the rest"),
    (r",? (?:but )?not (?=[a-z])", ", no "),
    (rf"\b{_WANT} (?:a |my |his |her )?(?:bigger|wider|thicker|broader|stronger|big|strong|larger|grow)\b", ", grow"),
    (r"\b(?:bigger|wider|thicker|broader|larger|boulder|thick|wide|capped)\b(?= [a-z])", "grow"),
    (
        r"\b(?:bring(?:ing)? up|build(?:ing)?(?: up)?(?: a)?(?: strong(?:er)?)?|prioriti[sz]e|priority (?:is|are|on)|focus(?:sed|ed)?(?: on)?(?: the)?|grow(?: only)?(?: the| my)?)\b",
        "grow",
    ),
    (r"\b([a-z ]+?) (?:are|is) (?:the |my )?(?:focus|priority|lagging|weak|what's missing|a priority)\b", r"grow \1"),
    (
        r"\b([a-z]+(?: [a-z]+)?) (?:lag(?:s|ging)?(?: behind)?|needs? work|emphasis|first|up|focus(?:sed|ed)?|priority|bigger|wider|stronger)(?=[,.;]|$)",
        r"grow \1",
    ),
    (
        r"\b(?:keep|leave|hold|maintain)(?: the| my)? ([a-z]+(?: and [a-z]+)?) (?:ticking over|as (?:it is|they are)|the same|at maintenance|where (?:it is|they are)|on hold)\b",
        r"hold \1",
    ),
    (
        r"\b([a-z]+(?: and [a-z]+)?) (?:on|at|in) (?:maintenance|hold)\b|\b([a-z]+(?: and [a-z]+)?) (?:stays? where (?:it is|they are)|just kept|take a back seat|hold)(?=[,.;]|$)",
        r"hold \1\2",
    ),
    (r"\b(?:less|a bit less|fewer|smaller focus on) (?=[a-z])", "hold "),
    (
        r"\b(?:maintain|keep|hold) (?:everything|all)\b(?! else)|\b(?:all|everything) else (?:just kept|at maintenance|on hold)\b|\bleave the rest as it is\b",
        "hold the rest",
    ),
    (
        r"\b(?:leave out|skip|drop(?![ -]?sets?)|zero|no direct|i couldn't care less about|don't care about|nothing for(?: the)?|forget)(?: the)? ([a-z]+(?: and [a-z]+)?)(?: work)?(?: completely)?\b",
        r"no \1",
    ),
    (r"\bhams\b", "hamstrings"),
    (r"\b(?:bis|bi's)\b", "biceps"),
    (r"\b(?:tris|tri's)\b", "triceps"),
    (r"\b(?:bum|butt|booty|backside)\b", "glutes"),
    (r"\bthighs\b", "legs"),
    (r"\bposterior chain\b", "glutes and hamstrings and spinal erectors"),
    (r"\b(?:six|6)-pack\b", "abs"),
    (r"\b\d (\d+) ?kg dumbbells\b", r"dumbbells to \1 kg"),
    # health and age
    (
        r"\b(?:i'm|i am|she's|he's|aged?)? ?(\d\d)[- ]?(?:y/o|yo|y|yr old|yrs old|years? old|year-old|years? of age)\b",
        r"age \1",
    ),
    (r"\b(?:i'm|i am) (\d\d)\b(?! (?:kg|cm|min))", r"age \1"),
    (r"\b(\d\d)(?:f|m)\b|\b[mf]/(\d\d)\b", r"age \1\2"),
    (r"\b(?:i'm|i am|she's|he's) (?=pregnant|alone|a beginner|a novice|advanced|intermediate)", ""),
    (r"\b(?:careful with|mind|watch|protect)(?: my| the| his| her)? ", "bad "),
    (
        r"\b(?:dodgy|tender|stiff|painful|troublesome|left|right|weak) (?=(?:knee|hip|shoulder|elbow|wrist|ankle|neck|lower back|back)s?\b)",
        "bad ",
    ),
    (r"\bbad bad\b", "bad"),
    (r"\bno (?:injuries|health issues|health problems|aches|pain)\b|\botherwise healthy\b", ","),
    (r"\b(?:a )?(?:complete|total|absolute) beginner\b|\bfirst time lifting\b|\bnever lifted\b", "beginner"),
    (r"\b(advanced|intermediate|novice) lifter\b", r"\1"),
    (r"\btype [12] (?:diabetic|diabetes)\b", "diabetes"),
    (r"\b(?:on|takes) (?=blood thinners)", ""),
    (r"\bwarfarin\b", "blood thinners"),
    (
        r"\b(?:my |a |the )*((?:left |right )?(?:knee|hip|shoulder|elbow|wrist|ankle|neck|lower back|rotator cuff|achilles)s?) (?:hurts?|acting up|trouble|pain|sore|clicks|aches?|problems?)(?=[,.;]|$)",
        r"bad \1",
    ),
    (r"\bbad (?:left|right) ", "bad "),
    (r"\bbad rotator cuff\b", "rotator cuff"),
    (r"\bbad achilles\b", "bad ankle"),
    # style
    (
        r"\b(?:most bang for the buck|get the most out of|time[- ]efficient|time is tight|keep it efficient|quick and efficient)\b",
        "efficient",
    ),
    (r"\b(?:maximum|max|most) growth\b|\bbuild muscle\b|\bhypertrophy\b", "growth"),
    (
        r"\b(?:supersets?|supersetts|pairs) (?:ok|okay|welcome|fine|yes)\b|\bpair exercises(?: to save time)?\b|\bsuperset push with pull\b",
        "with pairs",
    ),
    (r"\b(?:minimum effective dose|bare minimum(?: to keep my muscle)?|just keep what i have)\b", "minimum dose"),
    (r"\bhigh reps\b", "higher reps"),
    (r"\blow reps\b", "lower reps"),
    (
        r"\b(?:by myself|on my own|solo(?: lifter)?|i train alone|training alone|trains? alone|training on my own|nobody to spot me|mostly by myself|no spotter)\b",
        "alone",
    ),
    # lifts
    (
        r"(?:^|(?<=[,.;] ))([a-z' -]+?),? (?:yes|in|a must|has to be in there|every session|fine|ok|okay|is fine|are fine|is ok)(?=[,.;]|$)",
        r"like \1",
    ),
    (r"(?:^|(?<=[,.;] ))([a-z' -]+?),? (?:no|never|out)(?=[,.;]|$)", r"avoid \1"),
    (r"(?:^|(?<=[,.;] ))([a-z' -]+?) instead of ([a-z' -]+?)(?=[,.;]|$)", r"like \1, avoid \2"),
    (r"\bdo (?=[a-z])", "like "),
    (r"\bno jumping\b", "avoid jump squat and box jump"),
    (r"\bno (?:running|kipping)\b", ","),
    (r"\b(?:no|without|nothing) overhead(?: work| pressing)?\b", "avoid overhead press"),
    (
        r"\b(?:i |we |he |she )?(?:enjoy|enjoys|love|loves|am a big fan of|big fan of|like|likes|prefer|prefers) ",
        "like ",
    ),
    (
        r"\b(?:i |he |she )?(?:don't like|doesn't like|not a fan of|sick of|hate|hates|rather not do|refuse to do|scared of) ",
        "dislike ",
    ),
    (r"\b([a-z -]+?) (?:are|is) (?:out|not happening)(?=[,.;]|$)", r"avoid \1"),
    (r"\b([a-z -]+?) (?:are|is) (?:fun|my favourites?)(?=[,.;]|$)", r"like \1"),
    # kit
    (r"\bno (?:equipment|kit|gear)(?: at all)?\b|\bwithout any kit\b", "no equipment"),
    (r"\bhotel rooms?\b", "bodyweight"),
    (r"\b(?:free weights)(?: only)?\b", "barbell and dumbbells"),
    (
        r"\b(?:only|just) (dumbbells|bands|machines|bodyweight|a barbell|kettlebells?)\b|\b(dumbbells|bands|machines|bodyweight|kettlebells?|barbell) only\b",
        r"\1\2",
    ),
    (r"\b(?:dumbells|dumbbels|dumbels|dbs)\b", "dumbbells"),
    (r"\bkettelbells?\b", "kettlebell"),
    (r"\b(?:some|my|our|the) (?=(?:dumbbells|bands|barbell|rack|bench|kettlebells?)\b)", ""),
    (r"\b(?:full |normal |our |school |club |office )?(?:commercial )?gym\b(?! machines)", "commercial gym"),
    (r"\bhome commercial gym\b", "home gym"),
    (r"\bhotel commercial gym\b", "hotel gym"),
    (r"\bmachine commercial gym\b", "machine gym"),
    (r"\bgarage commercial gym\b", "garage gym"),
    # misspelt
    (r"\b(?:shoudlers|sholders?|shoulers)\b", "shoulders"),
    (r"\btricpes\b", "triceps"),
    (r"\bhamstrngs\b", "hamstrings"),
    (r"\bgluts\b", "glutes"),
    (r"\blungess\b", "lunges"),
    (r"\bdedlifts?\b", "deadlift"),
    (r"\bhypertensoin\b", "hypertension"),
)
