using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.App.Comparing;
using PlankFit.App.Planning;
using PlankFit.App.Running;
using PlankFit.Draughting.Skia;
using PlankFit.Export.Comparing;
using PlankFit.Export.Lists;
using PlankFit.Export.Summary;
using PlankFit.Export.Whole;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Comparing;

/// <summary>Lay-outs side by side: their figures are those of `lay`, and of arithmetic where a hull has any.</summary>
public sealed class TryingTests : IDisposable
{
    private readonly TempFolder folder = new();

    /// <summary>Read back from planking.json and from the summary, which `lay` writes.</summary>
    [Fact]
    public void TheJobAsItStandsHasTheFiguresThatLayGives()
    {
        string job = ComparedJobs.Launch(folder);
        LaidFigures figures = ComparedJobs.Laid(job, new() { Angle = "44" }).Layouts[0].Figures!;
        BottomPlan plan = PlannedJob
            .From(
                job,
                new Progress<PlanProgress>(),
                new Timings(),
                TestContext.Current.CancellationToken
            )
            .Plan!;
        var summary = PlanSummary.Of(plan);
        Assert.Equal(summary.Layers.Sum(l => l.Starboard + l.Port), figures.Planks);
        Assert.Equal(summary.Layers.Sum(l => l.Tapered), figures.Tapered);
        Assert.Equal(summary.StockMm, figures.StockMm, 1e-9);
        Assert.Equal(summary.WorstBend!.Id, figures.Bend.At);
        Assert.Equal(summary.WorstBend.Bend.Verdict, figures.Verdict);
        // The summary is silent of what nobody sees.
        Assert.Equal(summary.WidestGap?.Id, figures.Gap.Value > 0.005 ? figures.Gap.At : null);
        using var json = JsonDocument.Parse(
            WrittenFiles.Text(s => PlankingJson.Write(OnPlanks.Of(plan), s))
        );
        JsonElement[] planks = [.. json.RootElement.GetProperty("planks").EnumerateArray()];
        Assert.Equal(planks.Length, figures.Planks);
        // A plank in pieces takes what its pieces take.
        double stock = planks.Sum(p =>
            p.TryGetProperty("pieces", out JsonElement pieces) && pieces.GetArrayLength() > 0
                ? pieces.EnumerateArray().Sum(piece => piece.GetProperty("lengthMm").GetDouble())
                : p.GetProperty("cutLengthMm").GetDouble()
        );
        Assert.Equal(stock, figures.StockMm, 0.1);
        Assert.Equal(150 * stock, figures.StockMm2, 20.0);
        Assert.Equal(
            (150 * stock) - planks.Sum(p => p.GetProperty("areaMm2").GetDouble()),
            figures.WasteMm2,
            60.0
        );
        Assert.Equal(
            planks.Max(p => p.GetProperty("bend").GetProperty("strainPercent").GetDouble()),
            figures.Bend.Value,
            1e-4
        );
        Assert.Equal(
            planks.Max(p => p.GetProperty("widestGapMm").GetDouble()),
            figures.Gap.Value,
            1e-3
        );
        Assert.Equal(
            planks.Max(p =>
                p.GetProperty("keelAngleDegrees") is { ValueKind: JsonValueKind.Number } angle
                    ? Math.Abs(angle.GetDouble() - 45)
                    : 0
            ),
            figures.Drift.Value,
            1e-3
        );
    }

    /// <summary>
    /// On a plane strip L long and C wide planks at an angle a lie between parallel lines w apart, over L sin a + C cos a. Where the corners leave no sliver the master
    /// stays where it is, and how many there are is counted on the fingers; else one more or less.
    /// </summary>
    [Fact]
    public void PlanksOfAPlaneAreCountedByArithmetic()
    {
        string job = ComparedJobs.Prism(folder, layer: "master = 3000");
        Comparison found = ComparedJobs.Laid(
            job,
            LongRuns.Asked
                ? new() { Angle = "38..62:2", Width = "90..170:8" }
                : new() { Angle = "38..62:12", Width = "90..170:16" }
        );
        Assert.Equal(1 + (LongRuns.Asked ? 13 * 11 : 3 * 6), found.Layouts.Length);
        double slope = Math.Atan2(406.4 - 10.16, 1016 - 25.4),
            chine = 1016 / Math.Cos(slope),
            // The keel's side is plumb, and the middle of the skin lies half a thickness within.
            keel = (25.4 / Math.Cos(slope)) + (9.525 / 2 * Math.Tan(slope)),
            across = chine - keel;
        int counted = 0;
        foreach (Layout layout in found.Layouts.Where(l => l.Number > 0))
        {
            double a = double.DegreesToRadians(Number(layout, "angle")),
                w = Number(layout, "width"),
                master = (3000 * Math.Sin(a)) - (across / 2 * Math.Cos(a)),
                forward = (master - (w / 2) + (across * Math.Cos(a))) / w,
                aft = ((6096 * Math.Sin(a)) - master - (w / 2)) / w;
            int planks = 1 + (int)Math.Ceiling(forward) + (int)Math.Ceiling(aft);
            bool roomy = Part(forward) is > 0.55 and < 0.98 && Part(aft) is > 0.55 and < 0.98;
            counted += roomy ? 1 : 0;
            Assert.InRange(
                layout.Figures!.Planks,
                2 * (planks - (roomy ? 0 : 1)),
                2 * (planks + (roomy ? 0 : 1))
            );
            Assert.Equal(0, layout.Figures.Tapered);
            Assert.Equal(0, layout.Figures.Gap.Value, 1e-3);
            Assert.Equal(0, layout.Figures.Drift.Value, 1e-3);
            Assert.Equal(0, layout.Figures.Bend.Value, 1e-4);
            // What the planks themselves take is the strip, whatever they are sawn from.
            Assert.Equal(
                2 * 6096 * across,
                layout.Figures.StockMm2 - layout.Figures.WasteMm2,
                30.0
            );
        }

        Assert.InRange(counted, 2, found.Layouts.Length);
    }

    [Fact]
    public void MetricAndImperialAgree()
    {
        using var other = new TempFolder();
        Comparison metric = ComparedJobs.Laid(
                ComparedJobs.Prism(folder),
                new()
                {
                    Width = "127..152.4:12.7",
                    Angle = "50",
                    Master = "2540,3048",
                }
            ),
            imperial = ComparedJobs.Laid(
                ComparedJobs.Prism(other, "in", 25.4m),
                new()
                {
                    Width = "5..6:1/2 in",
                    Angle = "50",
                    Master = "100,10'",
                }
            );
        Same(metric, imperial);
        // And the other way round: each asked for in the other's unit.
        Comparison inches = ComparedJobs.Laid(
                folder.File("job.toml"),
                new() { Width = "5 in,5 1/2 in", Master = "8 ft 4 in" }
            ),
            millimetres = ComparedJobs.Laid(
                other.File("job.toml"),
                new() { Width = "127 mm,139.7 mm", Master = "2540 mm" }
            );
        Same(inches, millimetres);
        Assert.Equal(3, inches.Layouts.Length);
        Same(
            inches,
            ComparedJobs.Laid(
                folder.File("job.toml"),
                new() { Width = "127,139.7", Master = "2540" }
            )
        );
        Assert.Contains(imperial.Layouts, l => l.Name == "angle 50°, width 5 1/2\", master 10'");
    }

    private static void Same(Comparison one, Comparison other)
    {
        Assert.Equal(one.Layouts.Length, other.Layouts.Length);
        foreach ((Layout a, Layout b) in one.Layouts.Zip(other.Layouts))
        {
            Assert.Equal(a.Figures!.Planks, b.Figures!.Planks);
            Assert.Equal(a.Figures.StockMm, b.Figures.StockMm, 1e-3);
            Assert.Equal(a.Figures.WasteMm2, b.Figures.WasteMm2, 1.0);
        }

        Assert.Equal(one.Unbeaten.Order(), other.Unbeaten.Order());
    }

    /// <summary>The values are in the text as a person would have put them there; all else is as it was.</summary>
    [Fact]
    public void OnlyTheLayersNamedAreChangedAndCrossingSkinsStayCrossed()
    {
        string job = ComparedJobs.Launch(folder),
            text = File.ReadAllText(job);
        (ImmutableArray<Variant> variants, ImmutableArray<Finding> findings) = Variants.Of(
            job,
            text,
            LengthUnit.Millimetre,
            new() { Width = "130", Layers = ["outer"] }
        );
        Assert.Empty(findings);
        int at = text.IndexOf("name = \"outer\"", StringComparison.Ordinal);
        Assert.Equal(
            text[..at] + text[at..].Replace("width = 150", "width = 130"),
            Assert.Single(variants).Text.Text
        );
        string turned = Variants
            .Of(job, text, LengthUnit.Millimetre, new() { Heads = "aft,forward" })
            .Variants.Single()
            .Text.Text!;
        Assert.Equal(
            text.Replace("heads = \"aft\"", "heads = \"x\"")
                .Replace("heads = \"forward\"", "heads = \"aft\"")
                .Replace("heads = \"x\"", "heads = \"forward\""),
            turned
        );
        Assert.Equal(
            Variants
                .Of(job, text, LengthUnit.Millimetre, new() { Width = "130", Layers = ["2"] })
                .Variants[0]
                .Text.Text,
            variants[0].Text.Text
        );
    }

    [Theory]
    [InlineData("--width 0", "must be greater than 0")]
    [InlineData("--layer middle", "has no layer of planks of this name or number; it has \"skin\"")]
    [InlineData("--by speed", "accepted: planks, stock")]
    [InlineData("--chart planks", "names two things")]
    [InlineData("--boards 3", "[nest]")]
    [InlineData("--boards 0", "one round at the least")]
    [InlineData("--angle --width", "these are 27180 lay-outs")]
    public void WhatIsAskedWronglyIsToldBeforeAnythingIsLaid(string where, string why)
    {
        string job = ComparedJobs.Prism(folder);
        CompareAsked asked = where switch
        {
            "--width 0" => new() { Width = "0,120" },
            "--layer middle" => new() { Width = "120", Layers = ["middle"] },
            "--by speed" => new() { Width = "120", By = "speed" },
            "--chart planks" => new() { Width = "120", Chart = "planks" },
            "--boards 3" => new() { Width = "120", BoardRounds = 3 },
            "--boards 0" => new() { Width = "120", BoardRounds = 0 },
            _ => new() { Angle = "30..60:0.2", Width = "100..189.5:0.5" },
        };
        Tried tried = ComparedJobs.Try(job, asked);
        Assert.Null(tried.Comparison);
        Finding fault = Assert.Single(tried.Findings);
        Assert.StartsWith(where.Split(' ')[0], fault.Where, StringComparison.Ordinal);
        Assert.Contains(why, $"{fault.Where} {fault.Message}", StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotBeLaidIsNamedWithItsReason()
    {
        string job = ComparedJobs.Prism(folder),
            bad = folder.File("bad.toml");
        File.WriteAllText(
            bad,
            File.ReadAllText(job)
                .Replace("units = \"mm\"", "units = \"ell\"", StringComparison.Ordinal)
        );
        Comparison found = ComparedJobs.Laid(job, new() { Master = "3000,99999", Others = [bad] });
        Assert.Equal(4, found.Layouts.Length);
        Assert.Equal(["master 99999 mm", bad], found.NotLaid.Select(l => l.Name));
        Assert.All(found.NotLaid, l => Assert.Contains(".toml", Assert.Single(l.Why)));
        Assert.Contains("99999", found.NotLaid.First().Why[0], StringComparison.Ordinal);
        Assert.Equal(2, CompareWords.NotLaid(found).Count());
        Assert.All(found.Unbeaten, n => Assert.InRange(n, 0, 1));
    }

    /// <summary>A file that is not there is a slip of the pen: told before anything is laid.</summary>
    [Fact]
    public void AnotherJobThatIsNotThereIsTold()
    {
        Tried tried = ComparedJobs.Try(
            ComparedJobs.Prism(folder),
            new() { Others = [folder.File("none.toml")] }
        );
        Assert.Null(tried.Comparison);
        Assert.Contains("none.toml", Assert.Single(tried.Findings).Where, StringComparison.Ordinal);
    }

    /// <summary>However it is written: what the job has already is laid once, as it stands.</summary>
    [Fact]
    public void WhatTheJobHasAlreadyIsNotTriedTwice()
    {
        string job = ComparedJobs.Prism(folder);
        Assert.Equal(
            ["angle 45°, width 120 mm"],
            Variants
                .Of(
                    job,
                    File.ReadAllText(job),
                    LengthUnit.Millimetre,
                    new() { Angle = "45.0,45", Width = "6 in,120" }
                )
                .Variants.Select(v => v.Name.Replace("45.0", "45", StringComparison.Ordinal))
        );
    }

    /// <summary>The folder of another job may be called as it pleases: sheets show what they can.</summary>
    [Fact]
    public void AFolderWithAnyNameIsShown()
    {
        string odd = Directory.CreateDirectory(folder.File("\u0007 \U0001F6F6")).FullName;
        string job = ComparedJobs.Prism(folder);
        foreach (string file in new[] { "job.toml", "offsets.csv" })
        {
            File.Copy(folder.File(file), Path.Combine(odd, file));
        }

        Comparison found = ComparedJobs.Laid(
            job,
            new() { Others = [Path.Combine(odd, "job.toml")] }
        );
        Assert.Equal(2, found.Laid.Count());
        using var pdf = new MemoryStream();
        PdfWriter.Write(pdf, CompareSheets.Of(found), "any", TestContext.Current.CancellationToken);
        Assert.True(pdf.Length > 1000);
    }

    /// <summary>Nothing is laid for a comparison of one, whether nothing was named or only what the job has.</summary>
    [Theory]
    [InlineData(null, "name values to try")]
    [InlineData("45", "has every value that was named already")]
    public void WhoHasNothingToCompareWithIsTold(string? angle, string why)
    {
        Tried tried = ComparedJobs.Try(ComparedJobs.Prism(folder), new() { Angle = angle });
        Assert.Null(tried.Comparison);
        Assert.Contains(why, Assert.Single(tried.Findings).Message, StringComparison.Ordinal);
    }

    /// <summary>Stopped from within, after so many: what is laid is kept, and it is said.</summary>
    [Fact]
    public void WhoStopsKeepsWhatIsFound()
    {
        using var stop = new CancellationTokenSource();
        Comparison found = ComparedJobs
            .Try(
                ComparedJobs.Prism(folder),
                new() { Angle = "40..50", Width = "100..150" },
                so => Cancel(stop, so.Layouts.Length >= 5),
                stop.Token
            )
            .Comparison!;
        Assert.Equal(122, found.Asked);
        // What the other cores had in hand may be there as well.
        Assert.InRange(found.Layouts.Length, 5, 5 + Environment.ProcessorCount);
        Assert.NotEmpty(found.Unbeaten);
        Assert.StartsWith(
            $"Stopped after {found.Layouts.Length} of 122",
            CompareWords.Head(found),
            StringComparison.Ordinal
        );
        // Those laid first lie all over the ranges, and not in their first corner.
        Assert.True(found.Layouts.Select(l => l.Of("angle")).Distinct().Count() > 3);
    }

    private static void Cancel(CancellationTokenSource stop, bool now)
    {
        if (now)
        {
            stop.Cancel();
        }
    }

    /// <summary>A lay-out with refused planks beats none that has fewer, whatever else it is better in.</summary>
    [Fact]
    public void NothingIsBetterForPlanksThatAreRefused()
    {
        Comparison laid = ComparedJobs.Laid(ComparedJobs.Prism(folder), new() { Angle = "44" });
        LaidFigures fair = laid.Layouts[0].Figures!;
        var found = new Comparison(
            laid.Job,
            [
                new(0, "fair", [], fair, []),
                new(1, "refused", [], fair with { Planks = 1, Refused = 1 }, []),
                new(2, "doubtful", [], fair with { Planks = 1, DoNotSaw = 1 }, []),
                new(3, "worse", [], fair with { Planks = fair.Planks + 1 }, []),
                new(4, "short", [], fair with { Planks = 1, Boards = new(0, 0, 1) }, []),
            ],
            5,
            [Measure.Planks]
        );
        Assert.Equal([0, 1, 2, 4], found.Unbeaten.Order());
    }

    private static double Part(double n) => n - Math.Floor(n);

    private static double Number(Layout layout, string key) =>
        double.Parse(layout.Of(key), System.Globalization.CultureInfo.InvariantCulture);

    public void Dispose() => folder.Dispose();
}
