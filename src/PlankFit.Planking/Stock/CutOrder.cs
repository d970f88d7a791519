namespace PlankFit.Planking.Stock;

/// <summary>
/// An order of cutting in which both sides of every cut can rest on something, and the saw is set anew as seldom as that allows; of two cuts alike the nearer to
/// the beginning. Our own rule, no source.
/// </summary>
internal static class CutOrder
{
    public static IEnumerable<SawCut> Rips(IEnumerable<SawCut> rips, double lowMm, double highMm)
    {
        List<SawCut> left = [.. rips.OrderBy(r => r.From.Y)];
        List<double> made = [lowMm, highMm];
        while (left.Count > 0)
        {
            SawCut next = left.MaxBy(r => Shorter(made, r.From.Y))!;
            left.Remove(next);
            made.Add(next.From.Y);
            yield return next;
        }
    }

    /// <summary>
    /// What is left of a lane on both sides of a cut is long enough to rest by itself, mm (a proposal, no source): cuts that leave so much may come in any order,
    /// and then go by the saw's setting.
    /// </summary>
    private const double RestsMm = 300;

    /// <summary>
    /// All cuts of lanes that lie ready side by side. Those come first that leave enough on both sides to rest on something, short ends last; among them the saw
    /// goes from its setting furthest to the left to that furthest to the right, and begins again where it must; in one setting the most even part first.
    /// </summary>
    public static IEnumerable<SawCut> Across(IReadOnlyList<LaneBench> lanes)
    {
        double setting = double.NegativeInfinity;
        while (true)
        {
            OpenCut[] open = [.. lanes.SelectMany(l => l.Open())];
            if (open.Length == 0)
            {
                open = lanes.Select(l => l.InEachOthersWay()).FirstOrDefault(o => o.Length > 0, []);
            }

            if (open.Length == 0)
            {
                break;
            }

            bool rests = open.Any(o => o.ShorterMm >= RestsMm);
            OpenCut next = open.Where(o => !rests || o.ShorterMm >= RestsMm)
                .OrderBy(o => o.Setting < setting)
                .ThenBy(o => o.Setting)
                .ThenByDescending(o => o.ShorterMm)
                .First();
            setting = next.Setting;
            yield return next.Lane.Make(next);
        }

        foreach (SawCut rest in lanes.SelectMany(l => l.Rest()))
        {
            yield return rest;
        }
    }

    private static double Shorter(IReadOnlyList<double> made, double at) =>
        Math.Min(
            at - made.Where(m => m <= at).DefaultIfEmpty(at).Max(),
            made.Where(m => m >= at).DefaultIfEmpty(at).Min() - at
        );
}
