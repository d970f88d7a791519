using CsCheck;
using PlankFit.Planking.Units;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

/// <summary>A figure broken across lines is read as another: 4'-11 at the end of one and 5/16" at the beginning of the next.</summary>
public sealed class FiguresUnbrokenTests
{
    private static readonly Gen<string> Words = Gen.OneOf(
        Of("fall", "across", "the", "forward corner the longer;", "in", "and"),
        Gen.Select(Gen.Double[-3000, 3000], Gen.Enum<LengthUnit>())
            .Select((mm, unit) => LengthText.ForPaper(mm, unit)),
        Gen.Double[0, 900].Select(mm => LengthText.ForPaper(mm, LengthUnit.Foot) + ","),
        Of("0.26 lb;", "34 %", "12.5 kg", "- 3'-2 1/2\"", "+ 1.5")
    );

    private static Gen<string> Of(params string[] those) =>
        Gen.Int[0, those.Length - 1].Select(i => those[i]);

    private static bool IsFigure(string word) => word.Any(char.IsAsciiDigit);

    [Fact]
    public void NoLineEndsWithinAFigure() =>
        Gen.Select(Words.Array[1, 25], Gen.Double[22, 90], Gen.Bool)
            .Sample(
                (words, width, bold) =>
                {
                    string text = string.Join(' ', words);
                    IReadOnlyList<string> lines = Letters.Wrap(text, 1.8, width, bold);
                    Assert.Equal(text, string.Join(' ', lines));
                    Assert.All(lines, l => Assert.InRange(Letters.Width(l, 1.8, bold), 0, width));
                    Assert.All(
                        words,
                        w =>
                            Assert.Contains(
                                lines,
                                l => l.Contains(w, StringComparison.Ordinal) || !IsFigure(w)
                            )
                    );
                },
                iter: LongRuns.Of(2000, 50_000)
            );

    [Fact]
    public void ALengthInFeetAndInchesStaysWhole() =>
        Assert.Equal(
            ["saw it", "4'-11 5/16\"", "long"],
            Letters.Wrap("saw it 4'-11 5/16\" long", 1.8, 18)
        );
}
