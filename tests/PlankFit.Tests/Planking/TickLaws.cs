using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Planking;

/// <summary>What must hold for the witness ticks of two neighbours.</summary>
internal static class TickLaws
{
    /// <summary>Ticks of both neighbours stand at one distance along the shared seam.</summary>
    public static void Check(Plank a, Plank b, List<string> broken)
    {
        string seam = a.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        bool OfSeam(PlankMark m) =>
            m.Kind == "witness"
            && m.Label.TrimEnd("abcdefghijklmnopqrstuvwxyz".ToCharArray()) == seam;
        PlankMark[] ma = [.. a.Marks.Where(OfSeam)],
            mb = [.. b.Marks.Where(OfSeam)];
        if (!ma.Select(m => m.Label).SequenceEqual(mb.Select(m => m.Label)))
        {
            broken.Add($"{a.Id} and {b.Id} have different ticks on their seam");
            return;
        }

        for (int i = 0; i < ma.Length; i++)
        {
            double fromA = ma[i].At.ChordTo(a.AfterEdge.Flat[0]),
                fromB = mb[i].At.ChordTo(b.ForwardEdge.Flat[0]);
            if (!(Math.Abs(fromA - fromB) <= 0.05 + a.StrainMm + b.StrainMm))
            {
                broken.Add(
                    $"tick {ma[i].Label} stands {fromA} along {a.Id} and {fromB} along {b.Id}"
                );
            }
        }
    }
}
