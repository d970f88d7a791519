namespace PlankFit.Tests.Support;

/// <summary>A job with a topside alone, flat from chine to sheer, its stem square and at station 0: every seam that ends on the stem ends on that station.</summary>
internal static class WallSided
{
    public const string Job = """
        [job]
        name = "Wall-sided"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"
        [[panel]]
        name = "topside"
        lower = "chine"
        upper = "sheer"
        [[layer]]
        panel = "topside"
        name = "side inner"
        thickness = 6
        width = 120
        heads = "aft"
        angle = 50
        [[layer]]
        panel = "topside"
        name = "side outer"
        thickness = 6
        width = 120
        heads = "forward"
        angle = 50
        [ends.topside]
        lower = { cut = "fit" }
        upper = { cut = "fit" }
        stem = { cut = "fit" }
        transom = { cut = "fit" }

        """;

    public const string Offsets = """
        line,measure,0,1,2,3,4,5
        ,position,0,1000,2000,3000,4000,5000
        keel edge,height,100,80,60,40,20,0
        keel edge,half-breadth,30,30,30,30,30,30
        chine,height,300,280,260,240,220,200
        chine,half-breadth,200,300,400,500,600,700
        sheer,height,900,860,820,780,740,700
        sheer,half-breadth,440,532,624,716,808,900
        """;
}
