using PlankFit.Export.Sheathing;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>A long hull with a narrow bow: the best first line is one from which the cloth covers all of it, and of a cloth that covers it from none no sheet is silent.</summary>
public sealed class CoveredToTheBowTests
{
    private const string Table = """
        line,measure,0,1,2,3,4,5,6,7,8,9,10,11,12
        ,position,0-0-0,1-2-0,2-4-0,3-8-0,5-2-0,7-0-0,9-2-0,11-8-0,14-4-0,17-2-0,20-0-0,23-0-0,26-0-0
        keel edge,height,2-3-4,1-10-0,1-5-3+,1-1-2+,0-9-6,0-6-5+,0-4-3,0-2-7+,0-2-2,0-2-1,0-2-2,0-2-3+,0-2-5+
        keel edge,half-breadth,0-1-1,0-1-1+,0-1-2,0-1-3,0-1-3+,0-1-4,0-1-5,0-1-6,0-1-7,0-2-0,0-1-7+,0-1-7+,0-1-7
        chine,height,2-6-0,2-3-7,2-1-7,1-11-6+,1-9-5+,1-7-3+,1-5-1+,1-3-1,1-1-4+,1-0-3+,0-11-7,0-11-6,1-0-0
        chine,half-breadth,0-6-1+,0-10-0+,1-1-5+,1-5-4,1-9-3+,2-1-5+,2-6-0+,2-10-0+,3-1-2+,3-3-4+,3-4-6,3-4-7+,3-4-1+

        """;

    private static string Job(string first) =>
        $$"""
            [job]
            name = "Long launch"
            units = "ft-in-8"
            [hull]
            offsets = "offsets.csv"
            offsets-are-to = "outside"
            keel = "keel edge"
            chine = "chine"
            [[layer]]
            name = "skin"
            thickness = "1/4 in"
            width = "5 1/2 in"
            heads = "aft"
            angle = 45
            angle-drift = 12
            [[layer]]
            kind = "cloth"
            name = "first cloth"
            thickness = "1/32 in"
            [[layer]]
            kind = "cloth"
            name = "second cloth"
            thickness = "1/32 in"
            [ends]
            keel = { cut = "fit" }
            chine = { cut = "left long", by = "1 in" }
            transom = { cut = "left long", by = "1 in" }
            stem = { cut = "left long", by = "1 in" }
            [[cloth]]
            name = "stitched 17 oz"
            kind = "stitched"
            mass = "17 oz/yd2"
            directions = [45, -45]
            roll = { width = "4-2-0", length = "80-0-0" }
            [[cloth]]
            name = "stiff"
            kind = "woven"
            mass = "10 oz/yd2"
            roll = { width = "4-2-0", length = "80-0-0" }
            locks-at = 9
            [[sheathing]]
            layer = "first cloth"
            cloth = "stitched 17 oz"
            keel = { past-centre-line = "1 in" }
            first-along = {{first}}
            [[sheathing]]
            layer = "second cloth"
            cloth = "stiff"
            keel = { stop = "1/2 in" }
            first-along = "keel"
            [resin]
            name = "invented"
            parts-by-volume = [2, 1]
            density = [1.15, 0.97]
            pot = [{ at = "60 F", mass = 100, minutes = 84 }, { at = "77 F", mass = 100, minutes = 44 }]
            film = [{ at = "60 F", minutes = 200 }, { at = "77 F", minutes = 110 }]
            sandable = [{ at = "60 F", minutes = 1440 }, { at = "77 F", minutes = 720 }]
            """;

    private static BottomPlan Plan(string first)
    {
        ReadResult read = JobReader.Read(
            Job(first).Replace("\r", ""),
            "job.toml",
            Table,
            "offsets.csv"
        );
        Assert.True(
            read.Job is not null,
            string.Join('\n', read.Findings.Select(f => f.Where + ": " + f.Message))
        );
        return BottomPlanner.Plan(read.Job).Plan!;
    }

    /// <summary>Turned by as much as makes its roll the narrowest, the line leaves the bow and no thread comes to its corner: one turned by less is taken, and lies flat.</summary>
    [Fact]
    public void TheBestFirstLineIsOneThatCoversAll()
    {
        SheathingPlan plan = Plan("\"best\"").Sheathing!;
        Assert.Empty(plan.Unlaid);
        SheathedSide side = plan.Layers.Single(l => l.Name == "first cloth").Sides[0];
        double turned = Assert.IsType<FirstLine.Straight>(side.First).TurnedDegrees;
        Assert.True(turned < 0);
        Assert.True(side.MostShear < Drape.FlatDegrees);
        // A step of the search further and it no longer covers: of those that do it is the narrowest.
        string further = FormattableString.Invariant($"{{ part = 0.5, turned = {turned - 0.25} }}");
        Assert.NotEmpty(Plan(further).Sheathing!.Unlaid);
    }

    /// <summary>From a line that leaves too soon nothing is laid: no finding says that the job has no [[sheathing]] for it, and the order names what is not in it. Of the stiff cloth, for which no dart has a place, no sheet asks for one.</summary>
    [Fact]
    public void WhatIsNotLaidIsNamedWhereItIsMissed()
    {
        BottomPlan plan = Plan("{ part = 0.5, turned = -3 }");
        SheathingPlan sheathing = plan.Sheathing!;
        Assert.Equal(["first cloth"], sheathing.Unlaid);
        string glue = string.Join('\n', plan.Glue!.Findings.Select(f => f.Where + f.Message));
        Assert.DoesNotContain("no [[sheathing]]", glue);
        Assert.Contains("as its [[sheathing]] says it cannot be laid", glue);
        Assert.Contains(
            sheathing.Findings,
            f => f.Message.Contains("such as \"best\"", StringComparison.Ordinal)
        );
        string words = string.Join(
            ' ',
            SheathingSheets
                .Of(plan, sheathing)
                .SelectMany(s => s.Shapes.OfType<Lettering>())
                .Select(l => l.Text)
        );
        Assert.Contains("NOT AMONG THEM: first cloth", words);
        SheathedSide stiff = sheathing.Layers.Single().Sides[0];
        Assert.True(stiff.MostShear > 4.5);
        Assert.Empty(stiff.Darts.Darts);
        Assert.Contains("for a dart no place was found", words);
        Assert.DoesNotContain(" or a dart", words);
        Assert.DoesNotContain("a dart,", words);
        string found = sheathing.Findings.Single(f => f.Message.Contains("no place")).Message;
        Assert.DoesNotContain("the 0 degrees", found);
    }
}
