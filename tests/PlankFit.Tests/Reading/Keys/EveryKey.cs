using PlankFit.Reading.Jobs;
using PlankFit.Tests.Reading.Names;

namespace PlankFit.Tests.Reading.Keys;

/// <summary>A sound job in which every key of the job file stands, in every form that it takes.</summary>
internal static class EveryKey
{
    public const string Job = Planking + "\n" + EveryClothKey.Tables;

    private const string Planking = """
        [job]
        name = "Every key"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        positions = "aft"
        offsets-are-to = "outside"
        keel-side = "plumb"
        keel = "keel edge"
        chine = "chine"
        between = ["diagonal"]
        as-written = ["chine/half-breadth/2"]
        [[layer]]
        kind = "planks"
        name = "inner"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 45
        master = 2200
        hold = "width"
        angle-drift = 7
        gap = 0.4
        stagger = 0
        species = "yard larch"
        [[layer]]
        kind = "cloth"
        name = "core cloth"
        thickness = 1
        lap = { width = 76, from = 0, to = 3900 }
        [[layer]]
        name = "middle"
        thickness = 9
        width = 150
        heads = "forward"
        angle = 45
        stagger = 0.5
        [[layer]]
        name = "outer"
        thickness = 9
        width = 150
        heads = "aft"
        angle = 45
        [[layer]]
        kind = "cloth"
        name = "first outside"
        thickness = 0.8
        [[layer]]
        kind = "cloth"
        name = "last outside"
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
        [ends.topside]
        lower = { cut = "left long", by = 20 }
        upper = { cut = "fit" }
        transom = { cut = "left long" }
        stem = { cut = "left long" }
        [[ends.topside.zone]]
        from = 0
        to = 900
        lower = { cut = "fit", allowance = 3 }
        upper = { cut = "left long", by = 30 }
        transom = { cut = "fit" }
        stem = { cut = "fit" }
        [ends]
        keel = { cut = "fit", allowance = 2 }
        chine = { cut = "left long", by = 25 }
        transom = { cut = "left long", by = 20 }
        stem = { cut = "fit" }
        [[ends.zone]]
        from = 0
        to = 900
        keel = { cut = "left long", by = 30 }
        chine = { cut = "fit", allowance = 15 }
        transom = { cut = "left long" }
        stem = { cut = "left long" }
        [limits]
        edge-strain-percent = 0.1
        twist-shear-percent = 0.15
        [[limits.bend]]
        least-radius-over-thickness = 100
        verdict = "by hand"
        source = "the yard's own"
        way = "cold"
        [[limits.bend]]
        least-radius-over-thickness = 0
        verdict = "too hard"
        [output]
        dxf-units = "in"
        paper = "A3"
        lengths = "inches"
        sides = "all"
        patterns = "tiled"
        cards = "pdf-svg-png"
        dxf = "both"
        sheets = "book-and-single"
        drawings = "svg-png"
        shape = "glb"
        [[behind]]
        name = "stringer A"
        kind = "stringer"
        line = "diagonal"
        width = 45
        from = 500
        to = 4000
        side = "both"
        [[behind]]
        name = "stringer B"
        kind = "stringer"
        from-keel = 120
        width = 30
        [[behind]]
        name = "frame 2"
        kind = "frame"
        station = "2"
        width = 40
        out-from = 10
        out-to = 300
        [[behind]]
        name = "sea cock"
        kind = "open"
        from-chine = 180
        position = 2600
        width = 80
        length = 80
        side = "starboard"
        [joints]
        stock-lengths = [1800, 2400]
        longest = 2400
        shortest = 600
        kind = "butt"
        ratio = 9
        cut = "along the backing"
        on = ["stringer", "block"]
        block = 200
        bearing = 10
        grid = 60
        skin = "planks on frames"
        [[joints.layer]]
        name = "outer"
        longest = 2500
        shortest = 500
        kind = "scarf"
        ratio = 10
        cut = "square"
        on = ["frame"]
        block = 100
        bearing = 5
        grid = 40
        [[joints.layer]]
        name = "middle"
        stock-lengths = [2000]
        [[joints.rule]]
        what = "next plank"
        distance = 100
        source = "the yard's rule"
        [[joints.rule]]
        what = "same backing"
        distance = 50
        count = 2
        [keel]
        stock-width = 110
        half-width-tolerance = 0.7
        proud-tolerance = 0.4
        most-deadrise = 60
        least-half-width = 10
        left-long = 20
        [[keel-layer]]
        name = "first keel"
        meets = "inner"
        thickness = 9
        half-width = "mitre"
        side = "plumb"
        from = 100
        [[keel-layer]]
        name = "second keel"
        meets = "middle"
        thickness = 9
        half-width = { line = "keel edge" }
        side = { degrees = 5 }
        [[keel-layer]]
        name = "third keel"
        meets = "outer"
        thickness = 9
        half-width = { forward = 40, aft = 50 }
        side = "square to plank"
        [nest]
        stock = "stock.csv"
        buy = ["yard.csv"]
        kerf = 3
        edge = 1
        end = 5
        plane = 0.5
        thicker = 1
        over-width = 0.2
        least-overhang = 10
        least-offcut = 300
        least-offcut-width = 40
        turn-end-for-end = true
        turn-face-for-face = false
        pairs-together = false
        grades = ["clear", "sound"]
        masters = "clear"
        least = { outer = "sound" }
        objective = "cost"
        time = 3
        rounds = 0
        seed = 2
        [setting-up]
        frames = ["900 mm", 1500]
        frame-thickness = 24
        frame-face = "forward"
        ribbands = 10
        transom-thickness = 30
        waterlines = [150, 300]
        backbone-half-width = { line = "keel edge" }
        chine-log = 45
        cloth-radius = 8
        chine-piece = { width = 40, up = 30 }
        [setting-up.topside]
        thickness = 18
        lap = "mitre"
        mitre-forward-of = 900
        flare = [{ station = "0", degrees = 20 }, { station = "3", degrees = 8 }]
        [as-built]
        measured = "measured.csv"
        from = "0"
        fitted = ["S1-08"]
        sawn = "sawn-planks.json"
        as-measured = ["chine/half-breadth/2"]
        [timber]
        planks = "yard larch"
        workshop-moisture = 9
        service-moisture = { temperature = "15 C", humidity = 72 }
        grain = "quarter"
        boards = "knotty"
        face-grain = "across"
        clamp-spacing = 250
        [[timber.species]]
        name = "yard larch"
        like = "douglas-fir"
        kind = "solid"
        density = 560
        modulus = "1.87 Mpsi"
        rupture = "13000 psi"
        movement-flat = 0.0026
        movement-quarter = 0.0013
        shrink-flat = 8.1
        shrink-quarter = 4.2
        source = "weighed in the yard"
        [[timber.species]]
        name = "yard ply"
        like = "okoume-plywood"
        kind = "plywood"
        least-radius-over-thickness = 130
        [fastenings]
        kind = "screw and pad"
        what = "nail"
        name = "pan head screw"
        spacing = 75
        nearest = 25
        clear-of-seams = 18
        clear-of-ends = 27
        clear-of-joints = 27
        clear-of-timber-edge = 8
        clear-of-open-places = 27
        clear-of-seams-below = 9
        clear-of-fastenings-below = 14
        pad = 9
        bite = 20
        lengths = [30, 40]
        hole = 3
        backing-depth = 45
        spare = 10
        pull-down = { kind = "staple through strap", spacing = 100, across = 60, strap = 1, bite = 5, block = 18, lengths = [14, 16] }
        [[fastenings.layer]]
        layer = "outer"
        kind = "none"
        vent = 200
        pull-down = "none"
        [[fastenings.layer]]
        layer = "middle"
        kind = "staple through strap"
        strap = 1.5
        pull-down = { kind = "screw and pad", spacing = 90, across = 50, pad = 9, bite = 5, block = 18, lengths = [30] }
        [[fastenings.backing]]
        name = "stringer A"
        depth = 30
        [trust]
        read-to = 1
        lofted-within = 0.5
        frames-made-within = 1.4
        keel-made-within = 0.8
        frames-stand-within = { athwart = 2, up = 2, along = 3, heel = 2 }
        bends-within = { chine = 2, keel = 2, keel-up = 3, over = 0.2 }
        stock-within = { width = 0.2, thickness = 0.3 }
        tape-within = 1.4
        string-within = 3
        height-within = 4
        saw-when = 2
        """;

    /// <summary>The same with what only another form of a key leaves room for.</summary>
    public static readonly string[] Others =
    [
        Job.Replace(
                "flare = [{ station = \"0\", degrees = 20 }, { station = \"3\", degrees = 8 }]",
                "sheer = \"sheer\""
            )
            .Replace("backbone-half-width = { line = \"keel edge\" }", "backbone-half-width = 70")
            .Replace(
                "workshop-moisture = 9",
                "workshop-moisture = { temperature = \"60 F\", humidity = 50 }"
            )
            .Replace(
                "service-moisture = { temperature = \"15 C\", humidity = 72 }",
                "service-moisture = 14"
            )
            .Replace("pad = 9", "strap = 1")
            .Replace("strap = 1, bite", "pad = 1, bite")
            .Replace("buy = [\"yard.csv\"]", "buy = \"yard.csv\""),
        Job.Replace(
            "flare = [{ station = \"0\", degrees = 20 }, { station = \"3\", degrees = 8 }]",
            "flare = 12"
        ),
    ];

    /// <summary>Read without a record of sawn planks.</summary>
    public static ReadResult Read(string job) =>
        EveryName.Read(job.Replace("sawn = \"sawn-planks.json\"\n", "").ReplaceLineEndings("\n"));
}
