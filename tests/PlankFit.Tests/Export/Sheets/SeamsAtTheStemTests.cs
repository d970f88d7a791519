using PlankFit.Export.Views;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>Seams that end on the stem, or on the transom, cross the station that stands there, and the table under the shell expansion has them.</summary>
public sealed class SeamsAtTheStemTests
{
    private static BottomPlan Topside(string name) =>
        (
            name == "day-launch"
                ? DemoPlans.Of(name)
                : WholeBottomTests.Planned(
                    JobReader.Read(WallSided.Job, "job.toml", WallSided.Offsets, "offsets.csv").Job!
                )
        ).Others[0];

    [Theory]
    [InlineData("day-launch")]
    [InlineData("wall-sided")]
    public void EverySeamThatEndsOnAStationIsUnderIt(string name) => AllAreThere(Topside(name));

    /// <summary>A bottom's too: the tender's transom is a station of her table.</summary>
    [Theory]
    [InlineData("tender")]
    [InlineData("survey-launch")]
    public void EverySeamOfABottomThatEndsOnAStationIsUnderIt(string name) =>
        AllAreThere(DemoPlans.Of(name));

    private static void AllAreThere(BottomPlan plan)
    {
        int met = 0;
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            var expanded = ExpandedLayer.Of(plan, layer);
            foreach (
                (PanelEdge at, ExpandedStation station) in new[]
                {
                    (PanelEdge.Stem, expanded.Stations[0]),
                    (PanelEdge.Transom, expanded.Stations[^1]),
                }
            )
            {
                // A plank and the next abaft it that both end there have their seam end there.
                foreach (Plank plank in layer.Starboard)
                {
                    Plank? next = layer.Starboard.FirstOrDefault(p => p.Number == plank.Number + 1);
                    if (
                        plank.OnHull.Ends.All(e => e.At != at)
                        || next is null
                        || next.OnHull.Ends.All(e => e.At != at)
                    )
                    {
                        continue;
                    }

                    double? girth = expanded.GirthWhere(plank.OnHull.AfterEdge, station);
                    Assert.True(girth is not null, $"{plank.Id} at {station.Name}");
                    Assert.InRange(girth.Value, 0, station.GirthMm);
                    met++;
                }
            }
        }

        Assert.True(met >= 6, $"{met} seams");
    }

    /// <summary>By the planks' own corners, and no surface: the flat side's section is a straight line from the chine, (200, 300) abreast and up, its layer 3 mm in.</summary>
    [Fact]
    public void TheirGirthsAreThoseOfTheStraightSection()
    {
        BottomPlan topside = Topside("wall-sided");
        PlankLayerPlan layer = topside.PlankLayers.First();
        var expanded = ExpandedLayer.Of(topside, layer);
        double[] girths =
        [
            .. layer
                .Starboard.Select(p =>
                    (p, Girth: expanded.GirthWhere(p.AfterEdge, expanded.Stations[0]))
                )
                .Where(g => g.Girth is not null)
                .Select(g => g.Girth!.Value)
                .Order(),
        ];
        double[] corners =
        [
            .. layer
                .Starboard.Where(p => p.AfterEdge.Exists)
                .SelectMany(p => new[] { p.AfterEdge.Seam[0], p.AfterEdge.Seam[^1] })
                .Where(c => c.X < 2)
                .Select(c => c.Z)
                .Order(),
        ];
        Assert.True(corners.Length >= 3);
        Assert.Equal(corners.Length, girths.Length);

        // The side goes up 600 mm for 240 mm abreast.
        double slope = Math.Sqrt((600 * 600) + (240 * 240)) / 600;
        for (int i = 1; i < corners.Length; i++)
        {
            Assert.Equal((corners[i] - corners[i - 1]) * slope, girths[i] - girths[i - 1], 1e-3);
        }
    }

    [Fact]
    public void TheTableUnderTheExpansionHasThem()
    {
        BottomPlan topside = Topside("wall-sided");
        PlankLayerPlan layer = topside.PlankLayers.First();
        var expanded = ExpandedLayer.Of(topside, layer);
        string[] words =
        [
            .. ShellExpansion.Of(topside, layer).Shapes.OfType<Lettering>().Select(l => l.Text),
        ];
        int at = Array.IndexOf(words, "station 0");
        string[] column = [.. words.Skip(at + 1).TakeWhile(w => w != "station 1")];
        foreach (Plank plank in layer.Starboard)
        {
            if (expanded.GirthWhere(plank.AfterEdge, expanded.Stations[0]) is { } girth)
            {
                int row = Array.IndexOf(
                    column,
                    $"{plank.Id.Short} | {PlankId.ShortOf(plank.Number + 1)}"
                );
                Assert.True(row >= 0, plank.Id.ToString());
                Assert.Equal(LengthText.PaperNumber(girth, LengthUnit.Millimetre), column[row + 1]);
            }
        }

        Assert.True(column.Length >= 2 * 4, string.Join("; ", column));
    }
}
