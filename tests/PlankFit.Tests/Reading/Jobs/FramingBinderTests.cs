using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Reading.Jobs;

/// <summary>[[behind]] as it is read, and what is said where it cannot be.</summary>
public sealed class FramingBinderTests
{
    [Fact]
    public void EveryWayOfSayingWhereIsRead()
    {
        Job job = Texts.Sound(
            With(
                """
                name = "a"
                kind = "stringer"
                from-keel = "12 in"
                width = 45
                from = 300
                to = 2000
                """,
                """
                name = "b"
                kind = "solid"
                line = "chine"
                width = 30
                side = "port"
                """,
                """
                name = "c"
                kind = "frame"
                station = "2"
                width = 40
                out-from = 100
                out-to = 300
                """,
                """
                name = "d"
                kind = "open"
                from-chine = 200
                position = 1500
                width = 80
                length = 90
                """
            )
        );
        Assert.Equal(
            [
                new FramingSpec(
                    "a",
                    FramingKind.Stringer,
                    new FramingLine.FromKeel(304.8),
                    45,
                    300,
                    2000
                ),
                new FramingSpec(
                    "b",
                    FramingKind.Solid,
                    new FramingLine.Offsets("chine"),
                    30,
                    null,
                    null
                )
                {
                    Only = Side.Port,
                },
                new FramingSpec(
                    "c",
                    FramingKind.Frame,
                    new FramingLine.AtStation("2"),
                    40,
                    null,
                    null
                )
                {
                    OutFromMm = 100,
                    OutToMm = 300,
                },
                new FramingSpec(
                    "d",
                    FramingKind.Open,
                    new FramingLine.Spot(
                        new FramingLine.FromChine(200),
                        new FramingLine.AtPosition(1500)
                    ),
                    80,
                    null,
                    null
                )
                {
                    LengthMm = 90,
                },
            ],
            job.Framing
        );
    }

    /// <summary>The table's positions grow forward, from the transom: 1500 from there is 900 from the stem of a bottom 2400 long.</summary>
    [Fact]
    public void PositionsAreTurnedWithTheTable()
    {
        string job = With(
                "name = \"d\"\nkind = \"open\"\nfrom-chine = 200\nposition = 1500\nwidth = 80\nlength = 90",
                "name = \"s\"\nkind = \"stringer\"\nfrom-keel = 100\nwidth = 30\nfrom = 300\nto = 2000"
            )
            .Replace("chine = \"chine\"", "chine = \"chine\"\npositions = \"forward\"");
        string offsets = Texts.Offsets.Replace("0,600,1200,2400", "2400,1800,1200,0");
        Job read = Texts.Sound(job, offsets);
        double from = read.Offsets.Stations[0].PositionMm + read.Offsets.Stations[^1].PositionMm;
        Assert.Equal(
            new FramingLine.AtPosition(from - 1500),
            ((FramingLine.Spot)read.Framing[0].Line).Across
        );
        Assert.Equal((from - 2000, from - 300), (read.Framing[1].FromMm, read.Framing[1].ToMm));
    }

    [Theory]
    [InlineData("kind = \"beam\"", "beam", "stringer")]
    [InlineData("width = -3", "greater than 0")]
    [InlineData("width = 5000", "is the unit right")]
    [InlineData("from-chine = 20", "say where its centre runs")]
    [InlineData("position = 20", "\"length\"")]
    [InlineData("length = 20", "say where its centre runs")]
    [InlineData("out-to = 20", "lies across the hull")]
    [InlineData("from = 900\nto = 300", "must be greater than from")]
    [InlineData("widht = 3", "did you mean \"width\"")]
    [InlineData("from-keel = -5", "0 or more")]
    public void WhatIsWrongIsSaid(string instead, params string[] words)
    {
        string key = instead.Split(' ')[0];
        string[] sound = ["name = \"a\"", "kind = \"stringer\"", "from-keel = 200", "width = 45"];
        string table = string.Join(
            "\n",
            sound.Where(l => !l.StartsWith(key + " ", StringComparison.Ordinal)).Append(instead)
        );
        ReadResult read = Texts.Read(With(table));
        Assert.Contains(read.Findings, f => words.All(f.Message.Contains));
    }

    [Theory]
    [InlineData("line = \"chin\"", "chin", "no such line", "did you mean \"chine\"")]
    [InlineData("station = \"7\"", "no such station", "0, 1, 2, 3")]
    public void NamesThatTheTableHasNotAreErrorsAtTheirLine(string where, params string[] words)
    {
        ReadResult read = Texts.Read(With($"name = \"a\"\nkind = \"frame\"\nwidth = 45\n{where}"));
        Finding finding = Assert.Single(read.Findings);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Contains("[[behind]] 1", finding.Message);
        Assert.All(words, w => Assert.Contains(w, finding.Message));
        Assert.StartsWith("job.toml, line", finding.Where);
    }

    [Fact]
    public void ANameGivenTwiceIsAnError()
    {
        const string table = "name = \"a\"\nkind = \"stringer\"\nfrom-keel = 200\nwidth = 45";
        Assert.Contains(
            Texts.Read(With(table, table)).Findings,
            f => f.Message.Contains("has this name already")
        );
    }

    private static string With(params string[] tables) =>
        Texts.Job + string.Concat(tables.Select(t => "\n\n[[behind]]\n" + t));
}
