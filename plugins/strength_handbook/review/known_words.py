"""Words that look like names and are none, and names that are told at the start of a sentence."""

CAPITALS = frozenset(
    """
    monday tuesday wednesday thursday friday saturday sunday january february march april may june
    july august september october november december christmas easter nordic copenhagen romanian
    bulgarian spanish turkish russian cossack swiss olympic roman zercher pallof pendlay smith
    jefferson achilles borg latin english european british american german french italian wi
    """.split()  # noqa: SIM905  # far easier to read
)
"""Words with a capital letter that are no member: days, feasts, trade words."""

FIRST_WORDS = frozenset(
    """
    i i'm i've he she it they we you this that these those who what which each all both some any
    none one two three many most more less few nobody somebody everybody anybody someone everyone
    anyone nothing something everything here there now then first last next today tomorrow tonight
    yesterday another either neither half only no not if when where while after before until as
    and but or so note tip reminder warning caution example option important info question answer
    wave week session set sets rep reps round rounds lift lifts coach leader staff gym team group
    member members partner partners lifter lifters spotter spotters beginner beginners weight
    weights load loads bar bars plate plates band bands chain chains box boxes bench belt pack rack
    hook hooks pin pins safety safeties rope sled bell bag bags dumbbell dumbbells kettlebell mat
    grip stance tempo rest pause breath breathing speed depth height range effort form technique
    chalk tape floor wall clock time pain soreness cramp balance strength power warm-up test tests
    door room water sleep food training work progress volume order back chest head hip hips knee
    knees foot feet hand hands heel heels toe toes elbow elbows shoulder shoulders arm arms leg legs
    trunk thigh shin neck wrist ankle muscle muscles recovery fatigue practice
    """.split()  # noqa: SIM905
)
"""Words that begin sentences, and do or have something, without being somebody."""

ALSO_WORDS = frozenset(
    """
    ash bill bob chuck dawn dean don drew faith frank gene grace grant guy harry heath hope iris
    ivy jack jade jean joy lily mark max miles nick olive pat pearl penny pip ray rich rob robin
    rose ruby rusty sally sandy sky sue summer ted victor violet wade will
    """.split()  # noqa: SIM905
)
"""Names that are words too: that the files use the word elsewhere says nothing."""

GIVEN = frozenset(
    """
    aaron adam adrian agnes ahmed aisha alan alba albert alex alexander alexandra ali alice alicia
    alison alistair amanda amelia amir amy ana anders andrea andreas andrew andy angela angus anita
    anja ann anna anne annie anthony antonio arthur astrid barbara beatrice becky ben benjamin bernd
    bethany betty birgit boris brenda brian bruno callum camilla carl carla carlos carmen carol
    caroline catherine cathy cecilia charles charlie charlotte chiara chloe chris christian
    christina christine christopher claire clara claudia colin connor craig daisy dan daniel daniela
    danny darren dave david deborah denis denise diana diane diego dominic donald doris dorothy
    douglas duncan edward eileen elena eleanor elias elisabeth elizabeth ella ellen ellie emil emily
    emma emmanuel eric erik erika ernst esther eva evan evelyn fatima felix fergus finn fiona
    florian frances francis fred freya fritz gabriel gareth gary gemma geoff george georgia gerald
    gillian gina giulia gordon graham greg greta hamish hanna hannah hans harriet harvey hassan
    heather heidi heike helen helena henrik henry holger hugh hugo ian ibrahim imogen ines ingrid
    isaac isabel isabella isla ivan jacob jake james jamie jan jane janet jasmine jason javier jeff
    jens jennifer jenny jeremy jess jessica jill jim jo joan joanna joe joel johan johanna john
    johnny jon jonas jonathan jorge jose josef joseph josh joshua juan judith julia julian julie
    jurgen kai karen karin karl kate katherine kathleen katie keith kelly ken kevin kieran kim
    kirsten klaus kristin kurt kyle lara lars laura lauren lea leah lena leo leon leonie lewis liam
    linda lisa logan lorenzo lorna louis louise luca lucas lucia lucy luis luke lydia maggie magnus
    malcolm marco marcus margaret maria marie marina mario marion markus marta martha martin martina
    mary mateo matt matthew matthias maureen megan melanie mia michael michaela michelle miguel mike
    mila mina miriam mohammed moira molly monica morag morgan muhammad nadia nancy naomi natalie
    natasha nathan neil niall nicola nicole niklas nils nina noah nora norman oliver olivia omar
    oscar oskar owen pablo pamela patricia patrick paul paula pedro peter petra phil philip philippa
    phoebe pia pierre priya rachel ralf ralph rebecca renate rhys ricardo richard rita robbie robert
    roger roland ronald rory rosie ross roy rupert russell ruth ryan sabine sam samantha samir
    samuel sandra sara sarah scott sean sebastian sergio sharon sheila shona silvia simon simone
    sofia sonia sophia sophie stefan stella stephanie stephen steve steven stewart stuart susan
    susanne sven tanja tanya tara teresa tessa theo theresa thomas tim tina tobias toby tom tony
    tracy trevor uwe valerie vanessa vera veronica victoria vincent walter wendy werner william
    wolfgang xavier yasmin yusuf yvonne zara zoe
    """.split()  # noqa: SIM905
)
"""Common given names of several languages, from memory; only a help at the start of a sentence."""
