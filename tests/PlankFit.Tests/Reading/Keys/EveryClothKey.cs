namespace PlankFit.Tests.Reading.Keys;

/// <summary>The part of <see cref="EveryKey"/> that is about cloth, resin, glue, the crew's hours and the structure.</summary>
internal static class EveryClothKey
{
    public const string Tables = """
        [[cloth]]
        name = "stitched 805"
        kind = "stitched"
        mass = "17 oz/yd2"
        mat = 200
        directions = [45, -45]
        roll = { width = 1270, length = 50000 }
        glass-content = [0.40, 0.50, 0.55]
        mat-glass-content = [0.25, 0.30, 0.35]
        locks-at = 40
        [[cloth]]
        name = "finishing"
        kind = "woven"
        mass = 200
        roll = [{ width = 1000, length = 25000, count = 2, price = 120 }, { width = 1000, length = 7000 }]
        [[cloth]]
        name = "stitched 300"
        kind = "stitched"
        mass = 300
        roll = { width = 1270, length = 50000 }
        [[sheathing]]
        layer = "core cloth"
        cloth = "stitched 805"
        keel = { past-centre-line = 38 }
        chine = "stop"
        transom = "stop"
        stem = "stop"
        first-along = "keel"
        side-first = "port"
        courses = "across"
        join-lap = 40
        stagger = 100
        excess = 20
        mat-side = "to the wood"
        [[sheathing]]
        layer = "first outside"
        cloth = "finishing"
        keel = { stop = 20 }
        chine = { round = 75 }
        transom = { round = 60 }
        stem = { round = 50 }
        first-along = { part = 0.4, turned = -2 }
        [[sheathing]]
        layer = "last outside"
        cloth = "stitched 300"
        first-along = { station = "2", part = 0.5 }
        stitch-side = "outward"
        [resin]
        name = "slow epoxy"
        parts-by-volume = [2, 1]
        density = [1.15, 0.97]
        pot = [{ at = "20 C", mass = 100, minutes = 60 }, { at = "86 F", mass = 100, minutes = 32 }, { at = "20 C", mass = 500, minutes = 38 }]
        film = [{ at = "20 C", minutes = 150 }, { at = "30 C", minutes = 80 }]
        sandable = [{ at = "20 C", minutes = 1440 }, { at = "30 C", minutes = 700 }]
        tacky = [{ at = "20 C", from = 150, to = 300 }, { at = "30 C", from = 80, to = 160 }]
        recoat = [{ at = "20 C", from = 180, to = 2880 }, { at = "30 C", from = 100, to = 1440 }]
        use-part = 0.7
        waste-percent = 15
        thinned-percent = 5
        clocks-are-for = "thinned"
        price-per-kg = 18
        film-thickness = [0.2, 0.3, 0.5]
        [glue]
        name = "thick glue"
        parts-by-mass = [100, 45]
        density = ["10 lb/US gal", 1.0]
        rate = ["40 lb/1000 ft2", "65 lb/1000 ft2", "110 lb/1000 ft2"]
        use-part = 0.6
        waste-percent = 10
        thinned-percent = 0
        clocks-are-for = "unthinned"
        price-per-kg = 22
        [[glue.pot]]
        at = "20 C"
        mass = 200
        minutes = 50
        [[glue.pot]]
        at = "30 C"
        mass = 200
        minutes = 28
        [[glue.film]]
        at = "20 C"
        minutes = 120
        [[glue.film]]
        at = "30 C"
        minutes = 70
        [[glue.sandable]]
        at = "20 C"
        minutes = 1000
        [[glue.sandable]]
        at = "30 C"
        minutes = 600
        [[glue.tacky]]
        at = "20 C"
        from = 100
        to = 200
        [[glue.tacky]]
        at = "30 C"
        from = 60
        to = 120
        [[glue.recoat]]
        at = "20 C"
        from = 100
        to = 2000
        [[glue.recoat]]
        at = "30 C"
        from = 60
        to = 1000
        [priming]
        rate = [100, "150 g/m2", "6 oz/yd2"]
        [weave]
        rate = ["350 ft2/US gal", "250 ft2/US gal", "160 ft2/US gal"]
        coats = 3
        [[fillet]]
        along = "chine log"
        radius = 12
        angle = 110
        length = 8000
        [fairing]
        depth = 0.8
        part = 0.3
        [[filler]]
        name = "colloidal silica"
        into = "all"
        grams-per-kg = [40, 60, 90]
        density = 2.2
        price-per-kg = 30
        [crew]
        hands = 4
        mix = 4
        spread = 3
        fit-and-fasten = 12
        wait = 10
        wet = 6
        coat = 4
        fair = 12
        lay-fillet = 3
        trim = 2
        wash-and-key = 10
        board = 15
        most-grams = 500
        least-grams = 20
        held-by = "spring clamps"
        holds-planks = 2
        clamps-on-hand = 90
        wait-for-clamps = false
        sessions = "list"
        cup = { across-bottom = 70, across-top = 90, height = 110 }
        [clock]
        shifts = ["08:00-12:00", "13:00-17:00"]
        temperature = [{ at = "08:00", is = "16 C" }, { at = "14:00", is = "24 C" }]
        [structure]
        pressure = "20 kPa"
        span = 250
        coupon = { width = 50, span = 400, load = "20 kg" }
        wood-across = 0.05
        wood-shear = 0.078
        wood-poisson = 0.449
        glass-modulus = "72 GPa"
        resin-modulus = "3 GPa"
        """;
}
