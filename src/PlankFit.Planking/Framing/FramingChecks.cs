using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Framing;

/// <summary>What things behind the planks name, against the table.</summary>
internal static class FramingChecks
{
    public static IEnumerable<Finding> Of(ImmutableArray<FramingSpec> specs, OffsetTable table) =>
        from spec in specs
        from line in Parts(spec.Line)
        let message = Fault(line, table)
        where message is not null
        select new Finding(Severity.Error, $"behind {spec.Name}", message);

    private static IEnumerable<FramingLine> Parts(FramingLine line) =>
        line is FramingLine.Spot spot ? [spot.Along, spot.Across] : [line];

    private static string? Fault(FramingLine line, OffsetTable table)
    {
        switch (line)
        {
            case FramingLine.AtStation(var station) when table.Stations.All(s => s.Name != station):
                return $"the table has no station {station}; it has {string.Join(", ", table.Stations.Select(s => s.Name))}";
            case FramingLine.Offsets(var name) when table.Find(name) is null:
                return OffsetTable.NoLine(name);
            case FramingLine.Offsets(var name):
                int points = table.Named(name).Known.Length;
                return points < 2
                    ? $"the line '{name}' has {NumberText.Count(points, "point")} with both height and half-breadth; two or more are needed"
                    : null;
            default:
                return null;
        }
    }
}
