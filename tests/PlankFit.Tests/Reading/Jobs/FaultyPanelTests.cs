using PlankFit.Planking.Findings;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>A fault in a [[panel]] is told at its place, and brings none that is untrue.</summary>
public sealed class FaultyPanelTests
{
    private const string Head = """
        [job]
        name = "panels"
        units = "mm"
        [hull]
        offsets = "offsets.csv"
        offsets-are-to = "outside"
        keel = "keel edge"
        chine = "chine"

        """;

    private const string Topside = """
        [[panel]]
        name = "topside"
        lower = "chine"
        upper = "sheer"

        """;

    private const string Side = """
        [[layer]]
        panel = "topside"
        name = "side"
        thickness = 6
        width = 120
        heads = "forward"
        angle = 50

        """;

    private const string Offsets = """
        line,measure,0,1,2,3,4
        ,position,0,800,1600,3000,4400
        keel edge,height,400,210,95,35,20
        keel edge,half-breadth,25,32,40,55,55
        chine,height,700,545,470,410,390
        chine,half-breadth,100,240,360,440,450
        rubber,height,950,850,785,730,710
        rubber,half-breadth,200,390,580,710,730
        sheer,height,1200,1150,1100,1050,1030
        sheer,half-breadth,260,520,780,980,1010
        """;

    private static Finding[] Errors(string job) =>
        [
            .. JobReader
                .Read(Head + job, "job.toml", Offsets, "offsets.csv")
                .Findings.Where(f => f.Severity == Severity.Error),
        ];

    private static string With(string was, string now) =>
        Topside.Replace(was, now, StringComparison.Ordinal);

    [Theory]
    [InlineData("upper = \"sheer\"", "upper = \"sheer\"\nletter = \"tt\"", 1)]
    [InlineData("upper = \"sheer\"", "upper = \"sheer\"\nletter = \"É\"", 1)]
    [InlineData(
        "upper = \"sheer\"",
        "upper = \"sheer\"\nbetween = [\"rubber\"]\nknuckles = [\"rubber\"]",
        1
    )]
    [InlineData("upper = \"sheer\"", "upper = \"chine\"", 1)]
    [InlineData("name = \"topside\"\n", "", 1)]
    [InlineData("name = \"topside\"\n", "name = \"keel\"\n", 1)]
    public void AFaultOfAPanelBringsNoOther(string was, string now, int faults)
    {
        string side = now.Contains("\"keel\"", StringComparison.Ordinal)
            ? Side.Replace("\"topside\"", "\"keel\"", StringComparison.Ordinal)
            : Side;
        Assert.Equal(faults, Errors(With(was, now) + side).Length);
    }

    [Fact]
    public void TheEndsOfAFaultyPanelAreKnown()
    {
        Finding only = Assert.Single(
            Errors(
                With("name", "letter = \"tt\"\nname")
                    + Side
                    + "[ends.topside]\nlower = { cut = \"fit\" }\n"
            )
        );
        Assert.Contains("one capital letter", only.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FittedPlanksOfAFaultyPanelAreNotToldToBeOfNone() =>
        Assert.Single(
            Errors(
                With("upper = \"sheer\"", "upper = \"chine\"")
                    + Side
                    + "[as-built]\nfitted = [\"ST1-03\"]\n"
            )
        );

    [Fact]
    public void APanelWithoutPlanksIsToldAtItsOwnLine()
    {
        Finding only = Assert.Single(
            Errors(Topside + Side.Replace("panel = \"topside\"\n", "", StringComparison.Ordinal))
        );
        Assert.Equal("job.toml, line 9, column 1", only.Where);
        Assert.StartsWith("[[panel]] topside has no layer", only.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ACornerThatTheTableHasNotIsNoAdvice()
    {
        Finding[] errors = Errors(
            With(
                "lower = \"chine\"",
                "lower = \"chyne\"\nbetween = [\"rubber\"]\nknuckles = [\"foo\", \"rubber\"]"
            ) + Side
        );
        Assert.Equal(3, errors.Length);
        Assert.Contains(
            errors,
            f =>
                f.Where == "job.toml, line 13, column 13"
                && f.Message.StartsWith(
                    "[[panel]] topside knuckles = \"foo\": offsets.csv has no such line",
                    StringComparison.Ordinal
                )
        );
        Assert.Contains(
            errors,
            f =>
                f.Message.EndsWith(
                    "make two panels, one from its lower edge to \"rubber\" and one from \"rubber\" to \"sheer\"",
                    StringComparison.Ordinal
                )
        );
    }

    [Theory]
    [InlineData("letter = \"S\"\nname", "would be named SS1-07 and PS1-07, and S is a side")]
    [InlineData("letter = \"P\"\nname", "would be named SP1-07 and PP1-07, and P is a side")]
    public void TheLettersOfTheSidesAreRefused(string now, string told) =>
        Assert.Contains(
            told,
            Assert.Single(Errors(With("name", now) + Side)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("", ": leave the keel layer out")]
    [InlineData(
        "[[layer]]\nname = \"skin\"\nthickness = 9\nwidth = 150\nheads = \"aft\"\nangle = 45\n",
        "; there is \"skin\""
    )]
    public void AKeelLayerThatMeetsATopsideIsToldSo(string bottom, string toDo) =>
        Assert.EndsWith(
            "this is a layer of the topside, and only planks of the bottom meet the keel" + toDo,
            Assert
                .Single(
                    Errors(
                        Topside
                            + Side
                            + bottom
                            + "[[keel-layer]]\nmeets = \"side\"\nthickness = 6\n"
                    )
                )
                .Message,
            StringComparison.Ordinal
        );

    private static string Second(string lower, string upper) =>
        $"[[panel]]\nname = \"upper\"\nlower = \"{lower}\"\nupper = \"{upper}\"\n"
        + Side.Replace("\"topside\"", "\"upper\"", StringComparison.Ordinal)
            .Replace("\"side\"", "\"second\"", StringComparison.Ordinal);

    [Theory]
    [InlineData("rubber", "sheer")]
    [InlineData("chine", "rubber")]
    [InlineData("chine", "sheer")]
    [InlineData("keel edge", "rubber")]
    public void PanelsThatLieOverOneAnotherAreTold(string lower, string upper)
    {
        Finding only = Assert.Single(Errors(Topside + Side + Second(lower, upper)));
        Assert.Equal("job.toml, line 20, column 1", only.Where);
        Assert.StartsWith(
            $"[[panel]] upper, from \"{lower}\" to \"{upper}\", lies over the topside, from \"chine\" to \"sheer\", at stations 0, 1, 2, 3, 4: ",
            only.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void APanelOverAPlankedBottomIsToldAndPanelsSideBySideAreNot()
    {
        string skin = Side.Replace("panel = \"topside\"\n", "", StringComparison.Ordinal)
                .Replace("\"side\"", "\"skin\"", StringComparison.Ordinal),
            strake = With("\"sheer\"", "\"rubber\"") + Side;
        Assert.Empty(Errors(skin + strake + Second("rubber", "sheer")));
        Assert.Empty(Errors(skin + Topside + Side));
        Assert.Contains(
            "lies over the bottom",
            Assert.Single(Errors(skin + With("\"chine\"", "\"keel edge\"") + Side)).Message,
            StringComparison.Ordinal
        );
        // Of sheets it may be what it will.
        Assert.Empty(Errors(With("\"sheer\"", "\"rubber\"") + Side + Second("keel edge", "chine")));
    }

    [Theory]
    [InlineData("sheer", "rubber", "at stations 0, 1, 2, 3, 4")]
    [InlineData("keel edge", "sheer", "at stations 0, 1, 2, 3, 4")]
    public void ALineThatDoesNotLieBetweenIsToldAtItsKey(string between, string upper, string at)
    {
        Finding only = Assert.Single(
            Errors(
                With("upper = \"sheer\"", $"upper = \"{upper}\"\nbetween = [\"{between}\"]") + Side
            )
        );
        Assert.Equal("job.toml, line 13, column 12", only.Where);
        Assert.StartsWith(
            $"[[panel]] topside between: {between} does not lie between chine and {upper} {at}",
            only.Message,
            StringComparison.Ordinal
        );
    }
}
