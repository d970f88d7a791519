using System.Collections.Immutable;
using System.Globalization;

namespace PlankFit.Mutants;

/// <summary>What became of one mutant.</summary>
/// <param name="Killer">The test that sees it; null where it lives.</param>
internal sealed record Verdict(Mutant Mutant, string? Killer);

/// <summary>Parts of a hundred that are seen, area by area.</summary>
internal static class Scores
{
    public const double LeastPercent = 85;

    public static double Percent(IReadOnlyCollection<Verdict> of) =>
        of.Count == 0 ? 100 : 100.0 * of.Count(v => v.Killer is not null) / of.Count;

    public static IEnumerable<string> Table(
        ImmutableArray<Area> areas,
        ImmutableArray<Verdict> verdicts,
        ImmutableArray<Mutant> listed
    )
    {
        yield return Row("area", "planted", "seen", "live", "equal", "score");
        foreach (Area area in areas)
        {
            Verdict[] own = [.. verdicts.Where(v => v.Mutant.Area == area.Name)];
            if (own.Length == 0)
            {
                continue;
            }

            int seen = own.Count(v => v.Killer is not null);
            yield return Row(
                area.Name,
                $"{own.Length}",
                $"{seen}",
                $"{own.Length - seen}",
                $"{listed.Count(m => m.Area == area.Name && m.Equal is not null)}",
                Percent(own).ToString("0", CultureInfo.InvariantCulture) + " %"
            );
        }

        static string Row(params string[] cells) =>
            cells[0].PadRight(14) + string.Concat(cells.Skip(1).Select(c => c.PadLeft(9)));
    }
}
