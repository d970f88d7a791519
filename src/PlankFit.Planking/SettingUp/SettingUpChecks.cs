using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.SettingUp;

/// <summary>What setting up names, against the table.</summary>
internal static class SettingUpChecks
{
    /// <summary>Points that a line needs to have a slope.</summary>
    private const int LeastPoints = 2;

    public static IEnumerable<Finding> Of(SettingUpSpec spec, OffsetTable table, HullSpec hull)
    {
        if (spec.Backbone is BackboneWidth.Line(var backbone))
        {
            if (table.Find(backbone) is not { } line)
            {
                yield return NoLine(backbone, "setting-up.backbone-half-width");
            }
            else if (line.HalfBreadthsMm.Count(y => y is not null) is < LeastPoints and var points)
            {
                yield return Fault(
                    $"the line '{backbone}' has {NumberText.Count(points, "half-breadth")}; the backbone's half-width needs two at least",
                    "setting-up.backbone-half-width"
                );
            }
        }

        if (table.Find(hull.Panel.Lower) is null || table.Find(hull.Panel.Upper) is null)
        {
            // Where the bottom runs is not known, and that is said elsewhere.
            yield break;
        }

        int[] bottom = [.. HullLoft.Stations(table, hull.Panel)];
        switch (spec.Topside?.Slope)
        {
            case TopsideSlope.ToLine(var sheer) when table.Find(sheer) is null:
                yield return NoLine(sheer, "setting-up.topside.sheer");
                break;
            case TopsideSlope.ToLine(var sheer):
                var filled = FilledLine.From(table, table.Named(sheer));
                int along = bottom.Count(filled.Has);
                if (along < LeastPoints)
                {
                    yield return Fault(
                        $"the line '{sheer}' has {NumberText.Count(along, "point")} with height and half-breadth along the bottom; the topside's slope needs two or more",
                        "setting-up.topside.sheer"
                    );
                }

                break;
            case TopsideSlope.Flare(var rows):
                string[] known = [.. bottom.Select(i => table.Stations[i].Name)];
                foreach (string name in rows.Select(r => r.Station).OfType<string>().Except(known))
                {
                    yield return Fault(
                        $"the bottom has no station '{name}' for the topside's flare; it has {string.Join(", ", known)}",
                        "setting-up.topside.flare"
                    );
                }

                break;
        }
    }

    private static Finding NoLine(string name, string key) => Fault(OffsetTable.NoLine(name), key);

    private static Finding Fault(string message, string key) =>
        new(Severity.Error, Subject.Of("setting-up") with { Key = key }, message);
}
