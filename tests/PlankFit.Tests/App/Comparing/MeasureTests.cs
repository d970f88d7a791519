using System.Globalization;
using System.Text.Json;
using PlankFit.App.Nesting;
using PlankFit.App.Running;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Comparing;

/// <summary>Each figure by which lay-outs are judged, against a hull where it follows from a formula, or against another list that has it.</summary>
public sealed class MeasureTests : IDisposable
{
    private const double WidthMm = 150;

    private readonly TempFolder folder = new();

    /// <summary>
    /// A bottom bent to a circle of radius R along the hull and level across is a cylinder: laid flat, planks at a degrees stay at a degrees, straight and without a gap, and
    /// all of them are bent to the radius (R − t/2) / cos² a, the middle of the skin, whose fibre strain is t/2 of its curvature.
    /// </summary>
    [Fact]
    public void OnACylinderEveryPlankIsBentByTheSameFormula()
    {
        const double radius = 12_000,
            thick = 24;
        Comparison found = ComparedJobs.Laid(
            Job(x => radius - Math.Sqrt((radius * radius) - (x * x)), _ => 0, thick, 3000),
            new() { Angle = "40,52" }
        );
        Assert.Equal(3, found.Laid.Count());
        foreach (Layout l in found.Laid)
        {
            double cos = Math.Cos(
                    double.DegreesToRadians(
                        l.Number == 0
                            ? 45
                            : double.Parse(l.Of("angle"), CultureInfo.InvariantCulture)
                    )
                ),
                strain = 100 * (thick / 2) * cos * cos / (radius - (thick / 2));
            Assert.Equal(strain, l.Figures!.Bend.Value, 0.004 * strain);
            Assert.Equal(0, l.Figures.Gap.Value, 5e-3);
            Assert.Equal(0, l.Figures.Drift.Value, 2e-2);
            Assert.Equal(0, l.Figures.Tapered);
        }
    }

    /// <summary>
    /// A shallow bowl, both radii R: geodesics w apart come together as cos(s/R) about the middle of their length, so that each of the two edges of a seam stands
    /// K w L²/16 outside its chord, and the seam gapes by twice that. K of the bowl z = (x² + y²)/2R is (1/R²)/(1 + (x² + y²)/R²)².
    /// </summary>
    [Fact]
    public void OnABowlTheWidestGapIsThatOfItsCurvature()
    {
        const double radius = 8000,
            keel = 30,
            chine = 1000;
        LaidFigures figures = ComparedJobs
            .Laid(
                Job(x => x * x / (2 * radius), y => y * y / (2 * radius), 6, 1500, "bilge"),
                new() { Angle = "44" }
            )
            .Layouts[0]
            .Figures!;
        double across =
                chine - keel + ((Math.Pow(chine, 3) - Math.Pow(keel, 3)) / (6 * radius * radius)),
            length = across * Math.Sqrt(2),
            out2 = Math.Pow((keel + chine) / 2 / radius, 2),
            gauss = 1 / (radius * radius) / Math.Pow(1 + out2, 2);
        Assert.Equal(gauss * WidthMm * length * length / 8, figures.Gap.Value, 0.02);
        Assert.NotNull(figures.Gap.At);
    }

    /// <summary>As many boards as `nest` puts on its list for the same rounds; of boards too short for two planks no fewer than there are whole planks.</summary>
    [Fact]
    public void BoardsAreThoseOfThePlanOfCutting()
    {
        File.WriteAllText(
            folder.File("stock.csv"),
            "board,length,width,thickness,count\nB,2000,160,10,90\n"
        );
        string job = ComparedJobs.Prism(folder);
        File.AppendAllText(job, "\n[nest]\nstock = \"stock.csv\"\nrounds = 1\n");
        LaidFigures figures = ComparedJobs
            .Laid(job, new() { Angle = "46", BoardRounds = 1 })
            .Layouts[0]
            .Figures!;
        RunReport nest = NestRun.Run(
            new(job, folder.File("nested"), true),
            new Progress<PlanProgress>(),
            new Timings(),
            TestContext.Current.CancellationToken
        );
        using var json = JsonDocument.Parse(nest.Result!);
        Assert.Equal(
            json.RootElement.GetProperty("boards").GetArrayLength(),
            figures.Boards!.Boards
        );
        Assert.Equal(figures.Boards.Boards * 2000.0 * 160, figures.Boards.Mm2, 1e-3);
        Assert.Equal(0, figures.Boards.Unplaced);
        // Seams lie 152.4 / sin 45 apart along the keel; of 6096 mm a whole plank takes as much again as it goes across.
        double across = (1016 - 25.4) / Math.Cos(Math.Atan2(406.4 - 10.16, 1016 - 25.4)),
            whole = ((6096 - across) / (152.4 * Math.Sqrt(2))) - 2;
        Assert.InRange(figures.Boards.Boards, 2 * (int)whole, figures.Planks);
    }

    /// <summary>A bottom of sections z(x) + z(y), x from its middle; one skin to the outside.</summary>
    private string Job(
        Func<double, double> along,
        Func<double, double> across,
        double thickMm,
        double halfMm,
        string between = ""
    )
    {
        double[] xs = [.. Enumerable.Range(0, 25).Select(i => halfMm * ((i / 12.0) - 1))];
        string N(double mm) => mm.ToString("R", CultureInfo.InvariantCulture);
        string Row(string line, string measure, Func<double, double> of) =>
            $"{line},{measure},{string.Join(',', xs.Select(x => N(of(x))))}\n";
        string Line(string name, double y) =>
            Row(name, "height", x => along(x) + across(y)) + Row(name, "half-breadth", _ => y);
        File.WriteAllText(
            folder.File("offsets.csv"),
            $"line,measure,{string.Join(',', xs.Select((_, i) => i))}\n"
                + Row("", "position", x => x + halfMm)
                + Line("keel edge", 30)
                + (between.Length > 0 ? Line(between, 500) : "")
                + Line("chine", 1000)
        );
        string job = folder.File("job.toml");
        File.WriteAllText(
            job,
            $"""
            [job]
            name = "formula"
            units = "mm"
            [hull]
            offsets = "offsets.csv"
            offsets-are-to = "outside"
            keel = "keel edge"
            {(between.Length > 0 ? $"between = [\"{between}\"]" : "")}
            chine = "chine"
            [[layer]]
            name = "skin"
            thickness = {N(thickMm)}
            width = {N(WidthMm)}
            heads = "aft"
            angle = 45
            """
        );
        return job;
    }

    public void Dispose() => folder.Dispose();
}
