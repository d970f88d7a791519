using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Story;

/// <summary>The cells of the table that bear on a plank: those of the stations it crosses and the next one either way.</summary>
internal static class OffsetsStep
{
    public static StoryStep Of(BottomPlan plan, Plank plank)
    {
        LengthUnit unit = plan.Job.Units;
        double from = plank.Outline.Min(p => p.X),
            to = plank.Outline.Max(p => p.X);
        ImmutableArray<Station> stations = plan.Job.Offsets.Stations;
        int first = Math.Max(0, LastAtOrBefore(stations, from)),
            last = Math.Min(stations.Length - 1, FirstAtOrAfter(stations, to));
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(
            $"The plank lies between x = {LengthText.FormatExact(from, unit)} and {LengthText.FormatExact(to, unit)}: stations {stations[first].Name} to {stations[last].Name}."
        );
        string[] names = [.. plan.Job.Hull.Panel.Lines];
        for (int i = first; i <= last; i++)
        {
            IEnumerable<string> cells = names
                .Select(n => (Name: n, Line: plan.Job.Offsets.Find(n)!))
                .Select(l =>
                    $"{l.Name} {Cell(l.Line.HeightsMm[i], unit)} up, {Cell(l.Line.HalfBreadthsMm[i], unit)} out"
                );
            lines.Add(
                $"  station {stations[i].Name} at {LengthText.FormatExact(stations[i].PositionMm, unit)}: {string.Join("; ", cells)}"
            );
        }

        return new("The offsets that bear on it (the table of offsets)", lines.ToImmutable());
    }

    private static string Cell(double? mm, LengthUnit unit) =>
        mm is { } value ? LengthText.FormatExact(value, unit) : "not given";

    private static int LastAtOrBefore(ImmutableArray<Station> stations, double x)
    {
        int found = 0;
        for (int i = 0; i < stations.Length; i++)
        {
            found = stations[i].PositionMm <= x ? i : found;
        }

        return found;
    }

    private static int FirstAtOrAfter(ImmutableArray<Station> stations, double x)
    {
        for (int i = 0; i < stations.Length; i++)
        {
            if (stations[i].PositionMm >= x)
            {
                return i;
            }
        }

        return stations.Length - 1;
    }
}
