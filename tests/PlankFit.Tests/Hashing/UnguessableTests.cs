using PlankFit.Hashing;

namespace PlankFit.Tests.Hashing;

public sealed class UnguessableTests
{
    /// <summary>That as many as a thousand bytes are all alike in two draws happens once in 256 to the thousandth: a system that gives nothing is seen.</summary>
    [Theory]
    [InlineData(32)]
    [InlineData(256)]
    [InlineData(1000)]
    public void BytesAreFilledToTheLast(int count)
    {
        byte[][] drawn = [.. Enumerable.Range(0, 8).Select(_ => Unguessable.Bytes(count))];
        Assert.All(drawn, d => Assert.Equal(count, d.Length));
        for (int i = 0; i < count; i++)
        {
            // Eight noughts in one place by chance: once in 10 to the 19th.
            Assert.Contains(drawn, d => d[i] != 0);
        }

        Assert.NotEqual(drawn[0], drawn[1]);
    }

    /// <summary>Of 100,000 digits each is expected 10,000 times with a deviation of 95: 1,000 off is beyond ten of them.</summary>
    [Fact]
    public void EveryDigitIsAsLikely()
    {
        string digits = Unguessable.Digits(100_000);
        Assert.Equal(100_000, digits.Length);
        Assert.All("0123456789", d => Assert.InRange(digits.Count(c => c == d), 9_000, 11_000));
    }
}
