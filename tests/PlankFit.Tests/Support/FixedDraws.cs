using CsCheck;

namespace PlankFit.Tests.Support;

/// <summary>
/// Draws that are the same in every run, for laws of which chance is known to find, once in some hundred draws, what is not mended yet (DEVELOPERS.md, "Traps"): what
/// holds today is kept from getting worse. PLANKFIT_LONG=1 or CsCheck_Iter draws anew.
/// </summary>
internal static class FixedDraws
{
    public static void Keep<T>(
        Gen<T> of,
        int usual,
        int asked,
        Action<T> law,
        Func<T, string>? print = null
    )
    {
        if (LongRuns.Asked || LongRuns.Said is not null)
        {
            of.Sample(law, iter: LongRuns.Said ?? asked, threads: 2, print: print);
            return;
        }

        Always(of, usual, law, print);
    }

    /// <summary>So many of them and no others, however long the run.</summary>
    public static void Always<T>(Gen<T> of, int draws, Action<T> law, Func<T, string>? print = null)
    {
        for (uint i = 1; i <= draws; i++)
        {
            of.Sample(law, seed: new PCG(i, 7).ToString(), iter: 1, threads: 1, print: print);
        }
    }
}
