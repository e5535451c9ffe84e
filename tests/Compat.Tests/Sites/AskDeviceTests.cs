namespace Compat.Tests.Sites;

public sealed class AskDeviceTests
{
    [Fact]
    public void A_question_without_a_device_says_that_none_is_named()
    {
        var question = new Question { Part = new PartId("display-coated"), Agent = new AgentId("isopropanol") };
        var wrong = Assert.Throws<QuestionException>(() => KnowledgeBase.Shipped.AskDevice(question));
        Assert.Equal(["no-device"], wrong.Problems.Select(problem => problem.Code));
    }

    [Fact]
    public void A_device_that_is_not_there_is_named_as_unknown()
    {
        var question = new Question { Device = new DeviceId("no-such-device"), Agent = new AgentId("isopropanol") };
        var wrong = Assert.Throws<QuestionException>(() => KnowledgeBase.Shipped.AskDevice(question));
        Assert.Contains(wrong.Problems, problem => problem.Code == "unknown-device");
    }
}
