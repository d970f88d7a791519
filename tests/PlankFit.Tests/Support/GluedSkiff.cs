namespace PlankFit.Tests.Support;

/// <summary>What makes the pilot skiff's job one with cloth, coats, fairing and a fillet: every figure is invented.</summary>
internal static class GluedSkiff
{
    /// <summary>Of what is no plank, in the order of the work.</summary>
    public static readonly string[] Parts =
    [
        "outside cloth starboard",
        "outside cloth port",
        "outside cloth coat 1 starboard",
        "outside cloth coat 1 port",
        "outside cloth coat 2 starboard",
        "outside cloth coat 2 port",
        "fairing starboard",
        "fairing port",
        "fillet chine log starboard",
        "fillet chine log port",
    ];

    public static string Added(string job) =>
        job
        + """

            [[layer]]
            kind = "cloth"
            name = "outside cloth"
            thickness = "0.4 mm"

            [[cloth]]
            name = "stitched 300"
            kind = "stitched"
            mass = 300
            roll = { width = "1370 mm", length = "50 m" }

            [[sheathing]]
            layer = "outside cloth"
            cloth = "stitched 300"
            keel = { past-centre-line = 0 }

            [resin]
            name = "resin of the test"
            parts-by-volume = [2, 1]
            density = [1.15, 0.97]
            pot = [{ at = "15 C", mass = 100, minutes = 84 }, { at = "25 C", mass = 100, minutes = 44 }, { at = "25 C", mass = 500, minutes = 28 }]
            film = [{ at = "15 C", minutes = 200 }, { at = "25 C", minutes = 110 }]
            tacky = [{ at = "15 C", from = 210, to = 420 }, { at = "25 C", from = 110, to = 220 }]
            recoat = [{ at = "15 C", from = 240, to = 4000 }, { at = "25 C", from = 130, to = 2100 }]
            sandable = [{ at = "15 C", minutes = 1900 }, { at = "25 C", minutes = 1000 }]

            [weave]
            rate = [100, 200, 300]

            [fairing]
            depth = "0.8 mm"
            part = 0.3

            [[fillet]]
            along = "chine log"
            radius = "1/2 in"
            length = "29 ft"

            [crew]
            hands = 4

            [clock]
            shifts = ["08:00-12:00", "13:00-17:00"]
            temperature = [{ at = "08:00", is = "16 C" }, { at = "14:00", is = "24 C" }]

            """.ReplaceLineEndings("\n");
}
