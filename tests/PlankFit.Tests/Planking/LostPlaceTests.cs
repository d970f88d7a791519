using System.Text.RegularExpressions;
using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>A bottom that cannot be followed is refused in stations and lines of its own table.</summary>
public sealed partial class LostPlaceTests
{
    /// <summary>The bottom carried on forward of its stem, which is 46 mm wide, folds within the reach of stock of 198 mm.</summary>
    private static NarrowStem.Hull Folding(double widthMm) =>
        NarrowStem.Build(
            (5, 6692.010204081633, 46, 17.5, 0, 1.430108817083423),
            (17.394958536913066, 5, 0.04706077925145851, false, true),
            (3, 8, widthMm, 39.6946299675644, false)
        );

    [Fact]
    public void TheRefusalNamesStationsAndLinesAndWhatToDo()
    {
        PlanResult result = Planned(Folding(198).Job);
        Assert.Null(result.Plan);
        Finding fault = Assert.Single(result.Findings);
        Assert.Equal("layer skin 1", fault.Where);
        Assert.Contains(
            "forward of station 0, outboard of 'chine'",
            fault.Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "'keel' and 'chine' between stations 0 and 1",
            fault.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("narrower stock", fault.Message, StringComparison.Ordinal);
    }

    /// <summary>What shows itself only when planks are laid is told beside what is told before.</summary>
    [Fact]
    public void AFaultOfAnotherLayerHidesNoFold()
    {
        Job job = Folding(198).Job;
        PlankLayerSpec wide = (job.Layers.OfType<PlankLayerSpec>().Last()) with
        {
            Name = "wide",
            WidthMm = 9000,
        };
        PlanResult result = Planned(job with { Layers = job.Layers.Add(wide) });
        Assert.Equal(["layer wide", "layer skin 1"], result.Findings.Select(f => f.Where));
        Assert.Contains("folds", result.Findings[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatItSaysToDoHelps() => WholeBottomTests.Planned(Folding(110).Job);

    /// <summary>No message has a raw parameter of a surface or a line in it, whatever the table holds.</summary>
    [Fact]
    public void NoMessageSpeaksInParameters() =>
        Gen.OneOf(OddTables.Gen, NarrowStem.Any.Select(h => h.Job))
            .Sample(
                job =>
                    Assert.DoesNotContain(
                        Planned(job).Findings,
                        f => Parameter().IsMatch(f.Message)
                    ),
                iter: LongRuns.Of(30, 3000),
                threads: 2
            );

    private static PlanResult Planned(Job job) => BottomPlanner.Plan(job);

    [GeneratedRegex(@"\b[uvst] ?= ?-?\d")]
    private static partial Regex Parameter();
}
