using System.Collections.Immutable;

namespace PlankFit.Planking;

/// <summary>Where port and starboard were measured apart each side has a plan of its own; port's is laid in the starboard frame and mirrored.</summary>
internal static class SidesApart
{
    public static PlankLayerPlan Joined(PlankLayerPlan starboard, PlankLayerPlan port)
    {
        ImmutableArray<SeamCheck> checks =
        [
            .. starboard.Checks.Where(c => c.Side == Side.Starboard),
            .. port.Checks.Where(c => c.Side == Side.Port),
        ];
        return starboard with { Port = port.Port, PortApart = port, Checks = checks };
    }

    /// <summary>A finding of the mirrored plan, said of the port side.</summary>
    public static Finding OfPort(Finding found) =>
        found with
        {
            Where = IsStarboardPlank(found.Where)
                ? string.Concat("P", found.Where.AsSpan(1))
                : found.Where,
            Message = PortIds(found.Message),
        };

    private static string PortIds(string message) =>
        System.Text.RegularExpressions.Regex.Replace(message, @"\bS(\d+-A?\d+)", "P$1");

    private static bool IsStarboardPlank(string where) =>
        where.Length > 3 && where[0] == 'S' && char.IsAsciiDigit(where[1]) && where.Contains('-');
}
