using System.Globalization;
using System.Text;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Keel;
using PlankFit.Export.Lines;
using PlankFit.Export.Tables;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Sheets;

/// <summary>What figures on sheets and in tables say of where along the hull they are.</summary>
public sealed class PlaceAlongTests
{
    private static (double X, string Words)[] Of(IEnumerable<Drawing> sheets) =>
        [
            .. sheets
                .SelectMany(s => s.Shapes.OfType<Lettering>())
                .Where(l => l.About.Length > 0)
                .Select(l =>
                {
                    string[] parts = l.About.Split(' ', 2);
                    return (double.Parse(parts[0], CultureInfo.InvariantCulture), parts[1]);
                }),
        ];

    /// <summary>Every station that is lettered is where the table has it.</summary>
    [Fact]
    public void StationsAreWhereTheTableHasThem()
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        Job job = plan.Job;
        (double X, string Words)[] fair =
        [
            .. Of([LinesPlan.Of(job)]),
            .. Of(CurvatureCharts.Of(job, FairnessCheck.Judge(job.Offsets, job.WrittenIn))),
        ];
        Assert.True(fair.Length > 2 * job.Offsets.Stations.Length);
        foreach ((double x, string words) in fair)
        {
            Station station = job.Offsets.Stations.Single(s => words == $"station {s.Name}");
            // A row may have positions of its own, a raked transom's.
            Assert.True(
                Math.Abs(station.PositionMm - x) < 0.001
                    || job.Offsets.Lines.Any(l =>
                        Math.Abs(
                            OffsetRow.PositionMm(
                                job.Offsets,
                                l,
                                job.Offsets.Stations.IndexOf(station)
                            ) - x
                        ) < 0.001
                    ),
                words
            );
        }
    }

    /// <summary>Of every row of the keel's figures all letters lead to its place; and the tables' cells to the same.</summary>
    [Fact]
    public void TheKeelsFiguresLeadToTheirPlace()
    {
        BottomPlan plan = DemoPlans.Of("survey-launch");
        Table stations = KeelTables.Stations(plan.Job, plan.Keel!);
        int position = stations.Columns.Select(c => c.Name).ToList().IndexOf("position mm"),
            station = stations.Columns.Select(c => c.Name).ToList().IndexOf("station");
        Assert.All(stations.Rows, r => Assert.Equal(r[position].Number, r[station].AtMm));
        HashSet<double> told =
        [
            .. Of(KeelPages.Of(plan, plan.Keel!)).Select(p => Math.Round(p.X, 2)),
        ];
        Assert.All(
            plan.Keel!.Layers.SelectMany(l => l.On(Side.Starboard)),
            r => Assert.Contains(Math.Round(r.PositionMm, 2), told)
        );
    }

    /// <summary>What is spoken of goes into the file as text, whatever stands in a name; who says nothing of it has no such mark.</summary>
    [Fact]
    public void TheFileHasItAsText()
    {
        static string Svg(string about)
        {
            using var stream = new MemoryStream();
            SvgWriter.Write(
                stream,
                new(
                    "t",
                    10,
                    10,
                    [new Lettering("text", Pen.Thin, new(1, 1), "3", 3) { About = about }]
                )
            );
            return Encoding.UTF8.GetString(stream.ToArray());
        }

        Assert.Contains(
            "data-about=\"12.5 station &quot;&lt;3&gt;&quot;\"",
            Svg("12.5 station \"<3>\""),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("data-about", Svg(""), StringComparison.Ordinal);
    }
}
