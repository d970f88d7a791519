using PlankFit.Planking.Laying;

namespace PlankFit.Export.AsBuilt;

/// <summary>How a sawn plank fits, in a few words.</summary>
public static class SawnWords
{
    public static string Of(SawnFit fit, double gapMm)
    {
        var said = new List<string>();
        if (fit.ShortAtAnEnd || fit.ShortMm > fit.SpareMm + SawnFindings.LengthMm)
        {
            said.Add("too short");
        }
        else if (fit.ShortMm > SawnFindings.LengthMm)
        {
            said.Add("takes of its spare length");
        }

        // What is too long goes into what is left long, where there is any.
        if (fit.LongMm > SawnFindings.LengthMm && fit.SpareMm <= 0)
        {
            said.Add("trim an end");
        }

        if (Math.Abs((fit.ForwardMm ?? 0) - (fit.AfterMm ?? 0)) > SawnFindings.LengthMm)
        {
            said.Add("scribe its fitted end");
        }

        if (fit.OpenMm > gapMm)
        {
            said.Add("open seam");
        }

        if (fit.TightMm > gapMm)
        {
            said.Add("plane its free edge");
        }

        if (Math.Abs(fit.ThinnerMm) > SawnFindings.ThicknessMm)
        {
            said.Add(fit.ThinnerMm > 0 ? "too thin" : "too thick");
        }

        return said.Count == 0 ? "fits" : string.Join(", ", said);
    }
}
