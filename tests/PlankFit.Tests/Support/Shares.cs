using MathNet.Numerics.Distributions;

namespace PlankFit.Tests.Support;

/// <summary>How many of the draws of chance came to what a test is about: few draws may all be others, and no test fails for that.</summary>
internal static class Shares
{
    /// <summary>What chance alone does less often than this does not happen.</summary>
    private const double Never = 1e-9;

    /// <summary>Fails where <paramref name="met"/> of <paramref name="draws"/> is fewer than chance leaves of a share that is no smaller than <paramref name="share"/>.</summary>
    public static void AtLeast(double share, int met, int draws) =>
        Assert.True(
            draws > 0 && (met == draws || Binomial.CDF(share, draws, met) > Never),
            $"{met} of {draws} draws, where a share of {share} is asked for"
        );
}
