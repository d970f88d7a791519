using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Geometry;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>The same hull written in other units, or with positions growing forward, gives the same planks.</summary>
public sealed partial class SameHullOtherwiseWrittenTests
{
    [Theory]
    [InlineData("m", 1000)]
    [InlineData("cm", 10)]
    [InlineData("in", 25.4)]
    [InlineData("ft", 304.8)]
    public void InOtherUnits(string unit, double mm)
    {
        string job = Text("job.toml")
            .Replace("units = \"mm\"", $"units = \"{unit}\"", StringComparison.Ordinal);
        job = Lengths()
            .Replace(
                job,
                m =>
                    m.Groups[1].Value
                    + Written(double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture) / mm)
            );
        Same(job, Cells(Text("offsets.csv"), (row, cell) => cell / mm));
    }

    [Fact]
    public void WithPositionsGrowingForward()
    {
        string job = Text("job.toml")
            .Replace(
                "offsets = \"offsets.csv\"",
                "offsets = \"offsets.csv\"\npositions = \"forward\"",
                StringComparison.Ordinal
            );
        Same(
            job,
            Cells(
                Text("offsets.csv"),
                (row, cell) =>
                    row.Contains("position", StringComparison.Ordinal) ? 4500 - cell : cell
            )
        );
    }

    private static void Same(string jobText, string offsetsText)
    {
        ReadResult read = JobReader.Read(jobText, "job.toml", offsetsText, "offsets.csv");
        Assert.True(
            read.Job is not null,
            string.Join("\n", read.Findings.Select(f => $"{f.Where}: {f.Message}"))
        );
        BottomPlan other = WholeBottomTests.Planned(read.Job!),
            plan = WholeBottomTests.Planned(LoftTests.Demo("tender"));
        foreach ((PlankLayerPlan a, PlankLayerPlan b) in plan.PlankLayers.Zip(other.PlankLayers))
        {
            Assert.Equal(a.Starboard.Length, b.Starboard.Length);
            foreach ((Plank p, Plank q) in a.Starboard.Zip(b.Starboard))
            {
                Assert.True(
                    p.FlatCut.Zip(q.FlatCut).All(v => v.First.ChordTo(v.Second) < 1e-3),
                    p.Id.ToString()
                );
                Assert.True(
                    p.Outline.Zip(q.Outline).All(v => v.First.ChordTo(v.Second) < 1e-3),
                    p.Id.ToString()
                );
                Assert.Equal(
                    p.Ends.Select(e => e.CutDegrees),
                    q.Ends.Select(e => e.CutDegrees),
                    (x, y) => Math.Abs(x - y) < 1e-6
                );
            }
        }
    }

    private static string Text(string file) =>
        File.ReadAllText(Path.Combine(DemoTables.Folder("tender"), file));

    private static string Cells(string table, Func<string, double, double> change) =>
        string.Join(
            '\n',
            table
                .Split('\n', StringSplitOptions.TrimEntries)
                .Select(row =>
                    row.StartsWith('#')
                    || row.Length == 0
                    || row.StartsWith("line,", StringComparison.Ordinal)
                        ? row
                        : string.Join(
                            ',',
                            row.Split(',')
                                .Select(
                                    (c, i) =>
                                        i < 2
                                            ? c
                                            : Written(
                                                change(
                                                    row,
                                                    double.Parse(c, CultureInfo.InvariantCulture)
                                                )
                                            )
                                )
                        )
                )
        );

    private static string Written(double value) =>
        value.ToString("0.#############", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"((?:thickness|width) = )([0-9.]+)")]
    private static partial Regex Lengths();
}
