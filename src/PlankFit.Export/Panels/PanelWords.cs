using System.Collections.Immutable;
using PlankFit.Geometry.Development;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Panels;

/// <summary>What is said of a developed bottom: whether it is developable, how it was laid flat, how good that is.</summary>
public static class PanelWords
{
    /// <summary>The verdict in a sentence or two.</summary>
    public static string Verdict(PanelPlan plan, LengthUnit unit)
    {
        DevelopmentVerdict v = plan.Flat.Verdict;
        string limits =
            $"{Angle(v.Tolerances.WarpDegrees)} of warp along a ruling and {LengthText.FormatExact(v.Tolerances.DepartureMm, unit)} off the surface";
        if (v.Developable)
        {
            return $"DEVELOPABLE within {limits}: the worst found is {Angle(v.Rulings.WarpDegrees)} and {LengthText.FormatExact(v.Departure.Mm, unit)}.";
        }

        (string lower, string upper) = Edges(plan);
        string warp =
            $"NOT DEVELOPABLE within {limits}. From {lower} to {upper} the {plan.Panel.Name}'s normal turns by up to {Angle(v.Section.Degrees)}, {Place(plan, v.Section.AtU)}.";
        string why = v.AnotherDevelopableFitsTheEdges
            ? $" A developable does hang between the same {lower} and {upper}, but it lies up to {LengthText.FormatExact(v.Departure.Mm, unit)} off the {plan.Panel.Name}, {Place(plan, v.Departure.At.U)}."
            : $" Rulings that fit both edges exist over {Percent(v.Rulings.FoundShare, 0)} of the {plan.Panel.Name}; the greatest warp along the best is {Angle(v.Rulings.WarpDegrees)}.";
        return warp + why;
    }

    public static string Strain(PanelPlan plan)
    {
        StrainSample worst = plan.Flat.Worst;
        if (Math.Abs(worst.Leading) < 5e-6)
        {
            return "No strain: less than 0.0005 % at every point sampled.";
        }

        double low = plan.Flat.Patch.Lower(worst.U),
            across = (worst.V - low) / (plan.Flat.Patch.Upper(worst.U) - low);
        (string lower, string upper) = Edges(plan);
        string where = across switch
        {
            < 0.05 => $"at the {lower}",
            > 0.95 => $"at the {upper}",
            _ => $"{Percent(across, 0)} of the way from {lower} to {upper}",
        };
        string does = worst.Leading > 0 ? "stretched" : "crowded";
        return $"Largest strain {Signed(worst.Leading)}: {does}, {Place(plan, worst.U)}, {where}.";
    }

    private static (string Lower, string Upper) Edges(PanelPlan plan) =>
        (plan.Panel.WordOf(PanelEdge.Lower), plan.Panel.WordOf(PanelEdge.Upper));

    /// <summary>How it was done, for the foot of the sheet.</summary>
    public static string Method(PanelPlan plan, LengthUnit unit)
    {
        FlatPanel flat = plan.Flat;
        string exact =
            flat.Method == FlatteningMethod.ByRulings
                ? "Laid flat by its rulings, which bends the sheet and does not strain it."
                : $"Laid flat by least strain: the shape from which an even, thin elastic sheet (Poisson's ratio 0.3) comes onto the {plan.Panel.Name} with the least energy; "
                    + $"doubling the grid moved every point by {LengthText.FineMost(Math.Ceiling(flat.Accuracy.PositionMm * 10) / 10, unit)}.";
        string unsettled = flat.Accuracy.Settled
            ? ""
            : " THE SEARCH DID NOT COME TO REST: DO NOT USE THIS SHAPE; run `plankfit check` on the table of offsets.";
        return exact
            + " It is the face that the table of offsets is to. Strain is length on the hull over length in the flat, less one: positive is stretched, negative crowded."
            + unsettled;
    }

    /// <summary>"at station 4", "between stations 4 and 5".</summary>
    public static string Place(PanelPlan plan, double u)
    {
        ImmutableArray<StationOnHull> stations = plan.Stations;
        double near = 0.02 * plan.Flat.Patch.URange;
        StationOnHull nearest = stations.MinBy(s => Math.Abs(s.U - u))!;
        if (Math.Abs(nearest.U - u) <= near)
        {
            return $"at station {Name(nearest)}";
        }

        int after = Math.Clamp(stations.Count(s => s.U < u), 1, stations.Length - 1);
        return $"between stations {Name(stations[after - 1])} and {Name(stations[after])}";
    }

    public static string Name(StationOnHull station) => LetterWidths.Drawable(station.Name);

    /// <summary>+0.09 %; two figures that count.</summary>
    public static string Signed(double strain)
    {
        double percent = 100 * strain;
        int decimals =
            Math.Abs(percent) >= 1 ? 1
            : Math.Abs(percent) >= 0.1 ? 2
            : 3;
        return (percent > 0 ? "+" : "") + NumberText.Padded(percent, decimals) + " %";
    }

    private static string Percent(double part, int decimals) =>
        NumberText.Padded(100 * part, decimals) + " %";

    private static string Angle(double degrees) =>
        NumberText.Trimmed(degrees, degrees < 1 ? 2 : 1) + "°";
}
