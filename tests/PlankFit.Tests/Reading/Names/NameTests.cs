using System.Text;
using PlankFit.Draughting.Dxf;
using PlankFit.Planking.Findings;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Text;

namespace PlankFit.Tests.Reading.Names;

/// <summary>The rule of names against what must bear them: the typeface, the plain letters of cut files, the terminal.</summary>
public sealed class NameTests
{
    private static IEnumerable<Rune> Signs =>
        Enumerable.Range(0, 0x30000).Where(Rune.IsValid).Select(c => new Rune(c));

    [Fact]
    public void EverySignThatIsTakenCanBeDrawnAndHasAFormInCutFiles()
    {
        Rune[] taken = [.. Signs.Where(Name.IsAccepted)];
        Assert.InRange(taken.Length, 480, 540);
        Assert.All(
            taken,
            sign =>
            {
                string text = sign.ToString();
                Assert.True(
                    LetterWidths.CanDraw(text) && LetterWidths.CanDraw(text, bold: true),
                    text
                );
                Assert.True(PlainText.IsSeen(sign), text);
                string ascii = DxfText.Ascii("a" + text + "b");
                Assert.True(ascii.All(char.IsAscii), text);
                Assert.True(sign.Value == '?' || !ascii.Contains('?'), text);
            }
        );
    }

    [Theory]
    [InlineData("Łódź", "Lodz")]
    [InlineData("Борей", "Borei")]
    [InlineData("Щука, объезд", "SHCHuka, obieezd")]
    [InlineData("Θάλεια", "THaleia")]
    [InlineData("Straße № 5", "Strasse No. 5")]
    [InlineData("Ærø “fair” 1½ €", "AEro \"fair\" 1 1/2 EUR")]
    public void CutFilesHaveItInPlainLetters(string name, string ascii)
    {
        Assert.Null(Name.Fault(name));
        Assert.Equal(ascii, DxfText.Ascii(name));
    }

    [Theory]
    [InlineData("a\u202Eb", "sign 2, U+202E (an unseen sign that steers the text around it)")]
    [InlineData("\u001B[31m", "sign 1, U+001B (a control character)")]
    [InlineData("\U0001F6A4", "U+1F6A4 (a picture or symbol)")]
    [InlineData("e\u0301", "type the two as one sign")]
    [InlineData("船", "U+8239 (船)")]
    [InlineData("a\u00A0b", "a blank that is not the common one")]
    public void WhatIsNotTakenIsNamed(string name, string says) =>
        Assert.Contains(says, Name.Fault(name), StringComparison.Ordinal);

    [Fact]
    public void AsLongAsIsSaid()
    {
        Assert.Null(Name.Fault(new string('W', Name.Longest)));
        Assert.Contains("101", Name.Fault(new string('W', 101)), StringComparison.Ordinal);
        Assert.Contains($"up to {Name.Longest} letters", Name.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void AFindingIsPlainWhateverItQuotes()
    {
        Finding finding = new Finding(Severity.Error, "a\u001Bb\n", "x\u202Ey\uD800z") with
        {
            Message = "tab\there",
        };
        Assert.Equal("a<U+001B>b<U+000A>", finding.Where);
        Assert.Equal("tab<U+0009>here", finding.Message);
        Assert.Equal(
            "x<U+202E>y<U+D800>z",
            new Finding(Severity.Note, "", "x\u202Ey\uD800z").Message
        );
        string endless = new Finding(Severity.Note, "", new string('a', 100_000) + "end").Message;
        Assert.True(endless.Length <= PlainText.Longest + 3);
        Assert.EndsWith("end", endless, StringComparison.Ordinal);
        Assert.Equal("船 \U0001F6A4 é", PlainText.Of("船 \U0001F6A4 é"));
        Assert.Equal("a\nb<U+009B>", PlainText.OfLines("a\nb\u009B"));
    }

    [Theory]
    [InlineData("S1-08\n")]
    [InlineData("S1-٠٨")]
    [InlineData("S1-0٨")]
    public void APlanksNumberHasPlainDigitsAndNothingAfter(string id)
    {
        Assert.Null(PlankId.Parse(id));
        Assert.NotNull(PlankIds.Expand("x" + id).Fault);
    }
}
