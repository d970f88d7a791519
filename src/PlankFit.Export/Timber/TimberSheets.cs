using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Timber;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Planking.Wood;

namespace PlankFit.Export.Timber;

/// <summary>The wood on paper: every plank's verdict, weight and movement, the bottom with the strain of each plank, and where the figures come from.</summary>
public static class TimberSheets
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan, TimberPlan timber)
    {
        List<SheetPage> pages = [];
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            if (panel.Timber?.Of(layer) is not { } wood)
            {
                continue;
            }

            pages.Add(StrainView.Page(panel, layer, wood));
            // Port is told apart only where it is no mirror image.
            foreach (
                Side side in layer.PortApart is null
                    ? [Side.Starboard]
                    : new[] { Side.Starboard, Side.Port }
            )
            {
                pages.AddRange(List(panel, timber.Spec, layer, wood, side).Pages(plan.Job));
            }
        }

        pages.AddRange(WoodSheets.Figures(plan, timber).Pages(plan.Job));
        pages.AddRange(WoodSheets.Limits(plan, timber).Pages(plan.Job));
        return SheetPage.Numbered(plan.Job, pages);
    }

    private static ListSheet List(
        BottomPlan plan,
        TimberSpec spec,
        PlankLayerPlan layer,
        LayerTimber wood,
        Side side
    )
    {
        LengthUnit unit = plan.Job.Units;
        string alike =
            layer.PortApart is null ? "starboard, and port alike (its centres lie to port)"
            : side == Side.Starboard ? "starboard"
            : "port";
        TimberRow[] rows =
        [
            .. TimberTables.Rows(plan).Where(r => r.Layer == wood && r.Row.Plank.Side == side),
        ];
        // A column that has nothing to say of any plank is left out.
        (ListColumn Column, Func<TimberRow, string> Read)[] columns =
        [
            .. Columns(plan).Where(c => rows.Any(r => c.Read(r) != "-")),
        ];
        return new(
            new(
                "Timber: bend, weight, movement",
                $"{alike}, {SheetWords.Of(layer)}",
                "figures",
                null,
                Cautions.Strength
            ),
            [.. Intro(plan, spec, wood)],
            [.. columns.Select(c => c.Column)],
            [.. rows.Select(r => columns.Select(c => c.Read(r)).ToImmutableArray())]
        );
    }

    private static IEnumerable<string> Intro(BottomPlan plan, TimberSpec spec, LayerTimber wood)
    {
        LengthUnit unit = plan.Job.Units;
        string density = wood.KgPerCubicMetre is { } kg
            ? $", {TimberWords.Density(kg, unit)}"
            : ", of unknown density";
        yield return $"{wood.Species.Title}{density}. A cold bend is trusted with {TimberWords.Strain(wood.Judge.ColdStrain ?? 0)} of strain along the grain: {wood.Judge.Basis}. "
            + $"A plank takes the harder verdict of its radius and of its strain (bend, and laying it flat on a curved {plan.Job.Hull.Panel.Name}, together).";
        if (wood.Both is { } both && wood.Starboard is { } side)
        {
            yield return $"The layer weighs {TimberWords.Weight(both.Kg, unit)} as fitted, without cloth or glue; {TimberWords.Weight(side.Kg, unit)} of it to starboard, centre {TimberSummary.Centre(plan, side.Centre)}. "
                + "Boards of one species differ in weight by a tenth and more.";
        }

        if (wood.Movement is { } run)
        {
            yield return $"{TimberSummary.Movement(run, unit)} {(spec.Grain == Grain.Flat ? "Flat-sawn" : "Quarter-sawn")}; {NumberText.Trimmed(run.Coefficient.Value, 5)} of the width for 1 %. Glued skins hold each other: what cannot move presses or pulls at seams and glue.";
        }

        yield return $"Clamp: what one clamp holds at {PlankWords.Small(spec.ClampSpacingMm, unit)} spacing, a rough estimate. "
            + "Pulled in, where a column says so: whether straight stock that does not close may be sprung sideways to the seam.";
    }

    private static IEnumerable<(ListColumn Column, Func<TimberRow, string> Read)> Columns(
        BottomPlan plan
    )
    {
        LengthUnit unit = plan.Job.Units;
        Station first = plan.Job.Offsets.Stations[0];
        string Place(double? mm) => mm is { } p ? LengthText.PaperNumber(p, unit) : "-";
        yield return (new("plank", 11), r => r.Row.Plank.Id.ToString());
        yield return (new("verdict", 27, false), r => r.Row.Plank.Bend.Verdict);
        yield return (
            new("strain, of cold limit", 12),
            r => PlankWords.StrainUsed(r.Timber.Bend.StrainIndex)
        );
        yield return (
            new("cold if laminated of", 17),
            r =>
                r.Timber.Bend.Laminations is { } n
                    ? $"{n} of {TimberWords.Lamination(r.Row.ThicknessMm / n, unit)}"
                    : "-"
        );
        yield return (
            new("widest on its curvature", 15),
            r => TimberWords.Widest(r.Timber.Bend.WidestMm, unit)
        );
        yield return (
            new("straight stock pulled in", 18, false),
            r => TimberWords.PulledIn(r.Row.Plank, r.Timber)
        );
        yield return (
            new($"weight {TimberWords.WeightUnit(unit)}", 11),
            r => r.Timber.Weight is { } w ? TimberWords.WeightNumber(w.Kg, unit) : "-"
        );
        yield return (
            new($"centre aft of station {first.Name}", 16),
            r => Place(r.Timber.Weight?.Centre.X - first.PositionMm)
        );
        yield return (
            new("out", 14),
            r => Place(r.Timber.Weight is { } c ? Math.Abs(c.Centre.Y) : null)
        );
        yield return (new("above base", 14), r => Place(r.Timber.Weight?.Centre.Z));
        yield return (
            new("across, shop to service", 15),
            r => r.Timber.Movement is { } m ? TimberWords.Movement(m.AcrossMm, unit) : "-"
        );
        yield return (
            new("clamp holds, estimate", 12),
            r => r.Timber.Bend.ClampNewtons is { } f ? TimberWords.Force(f, unit) : "-"
        );
    }
}
