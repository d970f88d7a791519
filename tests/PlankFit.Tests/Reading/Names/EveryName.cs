using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Names;

/// <summary>A job in which every key that takes a text has one, with a table, boards and measurements that go with it.</summary>
internal static class EveryName
{
    public const string Job = """
        [job]
        name = "Every name"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"
        between = ["diagonal"]
        as-written = ["position/2"]
        [[layer]]
        name = "inner"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 45
        species = "yard larch"
        [[layer]]
        kind = "cloth"
        name = "core cloth"
        thickness = 1
        [[layer]]
        name = "outer"
        thickness = 9
        width = 150
        heads = "forward"
        angle = 45
        [[layer]]
        kind = "cloth"
        name = "outside cloth"
        thickness = 0.5
        [[panel]]
        name = "topside"
        letter = "T"
        lower = "chine"
        upper = "sheer"
        between = ["rubber"]
        knuckles = []
        [[layer]]
        panel = "topside"
        name = "side"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 60
        [[keel-layer]]
        name = "first keel"
        meets = "inner"
        thickness = 9
        half-width = "mitre"
        [[keel-layer]]
        name = "second keel"
        meets = "outer"
        thickness = 9
        half-width = { line = "keel edge" }
        [timber]
        planks = "yard larch"
        service-moisture = { temperature = "15 C", humidity = 72 }
        [[timber.species]]
        name = "yard larch"
        like = "douglas-fir"
        density = 560
        source = "weighed in the yard"
        [limits]
        [[limits.bend]]
        least-radius-over-thickness = 100
        verdict = "by hand"
        source = "the yard's own"
        [[limits.bend]]
        least-radius-over-thickness = 0
        verdict = "too hard"
        [[behind]]
        name = "stringer A"
        kind = "stringer"
        line = "diagonal"
        width = 45
        [[behind]]
        name = "frame 2"
        kind = "frame"
        station = "2"
        width = 40
        [joints]
        kind = "butt"
        on = ["stringer"]
        [[joints.layer]]
        name = "outer"
        longest = 2500
        [[joints.rule]]
        what = "next plank"
        distance = 100
        source = "the yard's rule"
        [fastenings]
        kind = "screw and pad"
        name = "pan head screw"
        pull-down = "none"
        [[fastenings.layer]]
        layer = "outer"
        kind = "none"
        [[fastenings.backing]]
        name = "stringer A"
        depth = 30
        [setting-up]
        frames = ["900 mm", 1500]
        backbone-half-width = { line = "keel edge" }
        [setting-up.topside]
        thickness = 18
        lap = "mitre"
        flare = [{ station = "0", degrees = 20 }, { station = "3", degrees = 8 }]
        [nest]
        stock = "stock.csv"
        buy = ["yard.csv"]
        grades = ["clear", "sound"]
        masters = "clear"
        least = { outer = "sound" }
        rounds = 0
        [as-built]
        measured = "measured.csv"
        from = "0"
        fitted = ["S1-08"]
        as-measured = ["position/2"]
        [[cloth]]
        name = "finishing"
        kind = "woven"
        mass = 200
        roll = { width = 1000, length = 25000 }
        [[sheathing]]
        layer = "outside cloth"
        cloth = "finishing"
        first-along = { station = "2", part = 0.5 }
        [resin]
        name = "slow epoxy"
        parts-by-volume = [2, 1]
        density = [1.15, 0.97]
        [[resin.pot]]
        at = "20 C"
        mass = 100
        minutes = 60
        [[resin.pot]]
        at = "30 C"
        mass = 100
        minutes = 32
        [[resin.film]]
        at = "20 C"
        minutes = 150
        [[resin.film]]
        at = "30 C"
        minutes = 80
        [[resin.sandable]]
        at = "20 C"
        minutes = 1440
        [[resin.sandable]]
        at = "30 C"
        minutes = 700
        [[fillet]]
        along = "chine log"
        radius = 12
        length = 8000
        [[filler]]
        name = "silica"
        grams-per-kg = [40, 60, 90]
        [crew]
        hands = 3
        held-by = "spring clamps"
        [clock]
        shifts = [
            "08:00-12:00",
            "13:00-17:00",
        ]
        [[clock.temperature]]
        at = "08:00"
        is = "16 C"
        """;

    /// <summary>The same job with its topside to a sheer line, the one key that the other form leaves no room for.</summary>
    public static readonly string JobWithSheer = Job.Replace(
        "flare = [{ station = \"0\", degrees = 20 }, { station = \"3\", degrees = 8 }]",
        "sheer = \"sheer\""
    );

    public const string Offsets = """
        line,measure,0,1,2,3,4
        ,position,0,800,1600,3000,4400
        keel edge,height,400,210,95,35,20
        keel edge,half-breadth,25,32,40,55,55
        diagonal,height,560,385,290,225,205
        diagonal,half-breadth,64,138,205,250,256
        chine,height,700,545,470,410,390
        chine,half-breadth,100,240,360,440,450
        rubber,height,950,850,785,730,710
        rubber,half-breadth,180,380,570,710,730
        sheer,height,1200,1150,1100,1050,1030
        sheer,half-breadth,260,520,780,980,1010
        """;

    public const string Stock = """
        board,kind,count,length,width,thickness,species,grade,price,ends,faults,grain
        B-01,board,12,3600,160,10,yard larch,clear,21.5,40/0,1200..1260,
        B-02,board,30,2700,160,10,,sound,12,20,,
        """;

    public const string Yard = """
        board,length,width,thickness,species,grade,price
        Y-1,4800,160,10,yard larch,clear,30
        Y-2,4800,160,10,,clear,30
        """;

    public const string Measured = """
        what,where,side,value
        keel half-width,second keel/2,starboard,41
        girth,2,port,495
        """;

    public static ReadResult Read(
        string? job = null,
        string? offsets = null,
        string? stock = null,
        string? measured = null
    ) =>
        JobReader.Read(
            job ?? Job,
            "job.toml",
            offsets ?? Offsets,
            "offsets.csv",
            measured ?? Measured,
            null,
            [stock ?? Stock, Yard]
        );
}
